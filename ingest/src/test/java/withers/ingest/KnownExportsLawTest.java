package withers.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Going by the last export or reading every row: the same events, each from the same line, the same
 * markers, reports and quarantine, import by import.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Tag("long")
class KnownExportsLawTest {

  private static final int SEEDS = Integer.getInteger("known.seeds", 200);

  @TempDir Path folder;

  private long recognised;
  private long lookedUp;
  private long read;
  private long repeated;
  private long withheld;

  @Test
  void what_is_recognised_or_read_comes_to_the_same() {
    for (long seed = 0; seed < SEEDS; seed++) {
      holds(seed, EarlyRows.Time.WHEN_A_CORE_IS_FREE);
      if (seed % 4 == 0) {
        holds(seed, EarlyRows.Time.AT_ONCE);
      }
    }
    // The law is empty unless all of this happens.
    assertThat(recognised).as("recognised").isGreaterThan(SEEDS);
    assertThat(lookedUp).as("looked up").isGreaterThan(SEEDS / 4);
    assertThat(read).as("read beside recognised ones").isGreaterThan(SEEDS);
    assertThat(repeated).as("rows of a key that comes twice").isPositive();
    assertThat(withheld).as("withheld").isPositive();
  }

  private void holds(long seed, EarlyRows.Time early) {
    TestImports knowing = TestImports.knowing(folder.resolve(early + "-knowing-" + seed), early);
    TestImports reading = new TestImports(folder.resolve(early + "-reading-" + seed));
    List<RandomFiles.Export> exports = new RandomFiles(seed).exports();
    for (int i = 0; i < exports.size(); i++) {
      ImportReport known = knowing.take(files(knowing, exports.get(i)));
      ImportReport all = reading.take(files(reading, exports.get(i)));

      String what = "seed %d, %s, export %d of %s".formatted(seed, early, i, exports);
      assertThat(told(known)).as(what).isEqualTo(told(all));
      assertThat(known.reuse().notKept()).as(what).isEmpty();
      assertThat(knowing.events()).as(what).isEqualTo(reading.events());
      assertThat(knowing.log.snapshot().markers())
          .as(what)
          .isEqualTo(reading.log.snapshot().markers());
      count(known);
    }
    assertThat(knowing.vault.size()).as("seed %d", seed).isEqualTo(reading.vault.size());
  }

  private static List<Path> files(TestImports imports, RandomFiles.Export export) {
    return IntStream.range(0, export.texts().size())
        .mapToObj(i -> imports.text(i + "-" + export.date() + ".csv", export.texts().get(i)))
        .toList();
  }

  private static List<Object> told(ImportReport report) {
    return List.of(
        report.result(),
        report.tally(),
        report.withheld(),
        report.repeatedKeys(),
        report.rows(),
        report.remarks(),
        report.quarantine().map(KnownExportsLawTest::content));
  }

  private static String content(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void count(ImportReport report) {
    long rows = report.reuse().recognised();
    recognised += rows;
    lookedUp += report.reuse().lookedUp();
    read += rows > 0 ? report.tally().read() - rows : 0;
    repeated += rows > 0 ? report.repeatedKeys() : 0;
    withheld += rows > 0 && report.withheld().isPresent() ? 1 : 0;
  }
}
