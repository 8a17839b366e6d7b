package withers.ingest.dirty;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * The kept files are those that {@link BinaryFixtures} makes. {@code -Ddirty.write=true} writes
 * those that are missing; it never changes one that is there.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class BinaryFixturesTest {

  private static final boolean WRITE = Boolean.getBoolean("dirty.write");

  @TestFactory
  Stream<DynamicTest> is_kept_as_it_is_made() {
    return BinaryFixtures.all().entrySet().stream()
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getKey(), () -> check(file.getKey(), file.getValue())));
  }

  private static void check(String name, byte[] made) throws IOException {
    Path file = DirtyFixture.root().resolve(name);
    if (WRITE && !Files.exists(file)) {
      Files.createDirectories(file.getParent());
      Files.write(file, made);
    }
    assertThat(file).hasBinaryContent(made);
  }
}
