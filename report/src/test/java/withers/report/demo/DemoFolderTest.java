package withers.report.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.yaml.ConfigException;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DemoFolderTest {
  @TempDir private Path source;
  @TempDir private Path place;

  @BeforeEach
  void makes_files_to_begin_with() throws IOException {
    Files.writeString(source.resolve("withers.yaml"), "network: Coast\n");
    Files.writeString(Files.createDirectory(source.resolve("sources")).resolve("a.yaml"), "a\n");
  }

  @Test
  void a_new_folder_gets_the_files() throws IOException {
    DemoFolder demo = DemoFolder.fresh(place.resolve("demo"), source);

    assertThat(demo.path()).isEqualTo(place.resolve("demo").toAbsolutePath());
    assertThat(inside("demo")).containsExactly(".withers-demo", "sources/a.yaml", "withers.yaml");
    assertThat(place.resolve("demo/withers.yaml")).hasContent("network: Coast\n");
  }

  @Test
  void the_folder_of_an_earlier_demo_is_emptied_first() throws IOException {
    DemoFolder.fresh(place.resolve("demo"), source)
        .receive(List.of(source.resolve("withers.yaml")));
    Files.writeString(Files.createDirectories(place.resolve("demo/log/deep")).resolve("x"), "x");

    DemoFolder.fresh(place.resolve("demo"), source);

    assertThat(inside("demo")).containsExactly(".withers-demo", "sources/a.yaml", "withers.yaml");
  }

  @Test
  void a_folder_that_no_demo_made_is_left_as_it_is() throws IOException {
    Path theirs = Files.writeString(place.resolve("theirs.txt"), "precious");

    assertThatThrownBy(() -> DemoFolder.fresh(place, source))
        .isInstanceOf(ConfigException.class)
        .hasMessageContaining(
            "Expected a folder that is new, empty or made by the demo, but found other files ("
                + place.toAbsolutePath())
        .hasMessageContaining("name another with --workspace DIR");
    assertThat(theirs).hasContent("precious");
    assertThat(inside("")).containsExactly("theirs.txt");
  }

  @Test
  void links_are_removed_without_following_them() throws IOException {
    Path outside = Files.writeString(source.resolve("outside.txt"), "stays");
    DemoFolder.fresh(place.resolve("demo"), source);
    Files.createSymbolicLink(place.resolve("demo/link"), source);

    DemoFolder.fresh(place.resolve("demo"), source);

    assertThat(outside).hasContent("stays");
    assertThat(place.resolve("demo/link")).doesNotExist();
  }

  @Test
  void exports_go_into_the_inbox() {
    DemoFolder demo = DemoFolder.fresh(place.resolve("demo"), source);

    demo.receive(List.of(source.resolve("withers.yaml")));

    assertThat(place.resolve("demo/inbox/withers.yaml")).hasContent("network: Coast\n");
  }

  private List<String> inside(String folder) throws IOException {
    Path root = place.resolve(folder);
    try (Stream<Path> all = Files.walk(root)) {
      return all.filter(Files::isRegularFile)
          .map(path -> root.relativize(path).toString())
          .sorted()
          .toList();
    }
  }
}
