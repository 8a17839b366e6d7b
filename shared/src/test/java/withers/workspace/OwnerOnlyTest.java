package withers.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class OwnerOnlyTest {
  @TempDir private Path temp;

  @Test
  void folders_above_are_the_owners_only_too() throws IOException {
    OwnerOnly.folder(temp.resolve("a/b"));

    assertThat(permissions(temp.resolve("a"))).isEqualTo("rwx------");
    assertThat(permissions(temp.resolve("a/b"))).isEqualTo("rwx------");
  }

  @Test
  void an_empty_file_is_made_once_and_then_left_alone() throws IOException {
    Path file = temp.resolve("events.db");

    assertThat(OwnerOnly.file(file)).isTrue();
    Files.writeString(file, "content");
    assertThat(OwnerOnly.file(file)).isFalse();

    assertThat(file).hasContent("content");
    assertThat(permissions(file)).isEqualTo("rw-------");
  }

  @Test
  void a_new_file_overwrites_nothing() throws IOException {
    Path file = temp.resolve("note");
    OwnerOnly.writeNew(file, "old");

    assertThatThrownBy(() -> OwnerOnly.writeNew(file, "new"))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(file).hasContent("old");
  }

  @Test
  void a_replaced_file_has_the_new_content_and_leaves_nothing_beside_it() throws IOException {
    Path file = temp.resolve("list.csv");
    OwnerOnly.writeNew(file, "a longer old content");

    OwnerOnly.replace(file, "new".getBytes(StandardCharsets.UTF_8));

    assertThat(file).hasContent("new");
    assertThat(permissions(file)).isEqualTo("rw-------");
    assertThat(temp).isDirectoryNotContaining("glob:**.new");
  }

  private static String permissions(Path path) throws IOException {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
  }
}
