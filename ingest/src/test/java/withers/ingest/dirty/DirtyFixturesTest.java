package withers.ingest.dirty;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Reads every fixture as an import does, and compares with what a person wrote or checked. {@code
 * -Ddirty.write=true} writes the expected readings that are missing, to be checked by hand; it
 * never changes one that is there.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DirtyFixturesTest {

  private static final boolean WRITE = Boolean.getBoolean("dirty.write");

  @TempDir Path folder;

  @TestFactory
  Stream<DynamicTest> is_read_as_expected() {
    return DirtyFixture.all().stream()
        .map(fixture -> DynamicTest.dynamicTest(fixture.name(), () -> check(fixture)));
  }

  private void check(DirtyFixture fixture) {
    String read = DirtyImport.read(fixture, folder.resolve(fixture.name()));
    if (WRITE && fixture.expected().isEmpty()) {
      fixture.write(read);
    }
    assertThat(fixture.expected())
        .as("%s/expected.txt", fixture.name())
        .isPresent()
        .hasValueSatisfying(expected -> assertThat(read).isEqualTo(expected));
  }
}
