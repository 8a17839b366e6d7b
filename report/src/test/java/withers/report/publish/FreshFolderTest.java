package withers.report.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.point.Points;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class FreshFolderTest {
  @TempDir private Path parent;

  @Test
  void nothing_is_to_be_seen_before_it_is_put_in_place() throws IOException {
    Path place = parent.resolve("run");
    try (FreshFolder folder = FreshFolder.in(place, Points.NONE)) {
      folder.write("a.txt", bytes("a"));
      assertThat(place).doesNotExist();

      folder.write("inner", "b.txt", bytes("b"));
      folder.putInPlace();

      assertThat(place.resolve("a.txt")).hasContent("a");
      assertThat(place.resolve("inner/b.txt")).hasContent("b");
    }
    assertThat(parent.toFile().list()).containsExactly("run");
  }

  @Test
  void what_is_given_up_leaves_the_former_folder_as_it_was() throws IOException {
    Path place = parent.resolve("run");
    fill(place, "former");

    try (FreshFolder folder = FreshFolder.in(place, Points.NONE)) {
      folder.write("a.txt", bytes("half"));
    }

    assertThat(place.resolve("a.txt")).hasContent("former");
    assertThat(parent.toFile().list()).containsExactly("run");
  }

  @Test
  void the_new_folder_takes_the_place_of_the_former_one_whole() throws IOException {
    Path place = parent.resolve("run");
    fill(place, "former");
    Files.writeString(place.resolve("gone.txt"), "gone");

    fill(place, "fresh");

    assertThat(place.resolve("a.txt")).hasContent("fresh");
    assertThat(place.resolve("gone.txt")).doesNotExist();
    assertThat(parent.toFile().list()).containsExactly("run");
  }

  @Test
  void a_kill_between_the_two_moves_is_mended_by_the_next_attempt() throws IOException {
    Path place = parent.resolve("run");
    Files.createDirectory(parent.resolve(".run.old"));
    Files.writeString(Files.createDirectory(parent.resolve(".run.new")).resolve("b.txt"), "half");

    fill(place, "fresh");

    assertThat(place.toFile().list()).containsExactly("a.txt");
    assertThat(parent.toFile().list()).containsExactly("run");
  }

  private static void fill(Path place, String text) throws IOException {
    try (FreshFolder folder = FreshFolder.in(place, Points.NONE)) {
      folder.write("a.txt", bytes(text));
      folder.putInPlace();
    }
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
