package withers.workspace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class FolderTreeTest {
  @TempDir private Path temp;

  @Test
  void what_a_link_leads_to_stays() throws IOException {
    Path kept = Files.writeString(temp.resolve("kept"), "kept");
    Path folder = Files.createDirectories(temp.resolve("tree/inner")).getParent();
    Files.writeString(folder.resolve("inner/file"), "gone");
    Files.createSymbolicLink(folder.resolve("link"), kept);

    FolderTree.delete(folder);

    assertThat(folder).doesNotExist();
    assertThat(kept).hasContent("kept");
  }

  @Test
  void a_folder_that_is_not_there_is_no_mistake() throws IOException {
    FolderTree.delete(temp.resolve("nothing"));

    assertThat(temp).isEmptyDirectory();
  }
}
