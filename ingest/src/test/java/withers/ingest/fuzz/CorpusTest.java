package withers.ingest.fuzz;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Calls each target with every input that is kept for it, without the fuzzer. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CorpusTest {

  private static final Duration LONGEST = Duration.ofSeconds(30);
  private static final long MOST_BYTES = 1 << 20;

  @TestFactory
  Stream<DynamicTest> does_no_harm() {
    return Arrays.stream(Target.values())
        .flatMap(target -> files(target).stream().map(file -> replay(target, file)));
  }

  private static DynamicTest replay(Target target, Path file) {
    return DynamicTest.dynamicTest(
        target.word() + "/" + file.getFileName(),
        () -> {
          byte[] input = Files.readAllBytes(file);
          assertTimeoutPreemptively(LONGEST, () -> target.run(input));
        });
  }

  @Test
  void each_target_has_inputs_and_all_are_small() {
    long bytes = 0;
    for (Target target : Target.values()) {
      List<Path> files = files(target);
      assertThat(files).as(target.word()).hasSizeGreaterThan(10);
      bytes += files.stream().mapToLong(file -> file.toFile().length()).sum();
    }
    assertThat(bytes).isLessThan(MOST_BYTES);
  }

  private static List<Path> files(Target target) {
    try (Stream<Path> files = Files.list(target.corpus())) {
      return files.sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
