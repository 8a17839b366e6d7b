package withers.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.source.InputRefusedException;

/** Rows that are taken as they are checked, beside rows that are checked and then read again. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ReadOnceTest {

  private static final int SEEDS = 60;

  @TempDir Path folder;

  @Test
  void read_once_or_twice_an_export_comes_to_the_same() {
    for (long seed = 0; seed < SEEDS; seed++) {
      TestImports once = new TestImports(folder.resolve("once-" + seed));
      TestImports twice = new TestImports(folder.resolve("twice-" + seed)).readingTwice();
      List<RandomFiles.Export> exports = new RandomFiles(seed).exports();
      for (int i = 0; i < exports.size(); i++) {
        ImportReport report = once.take(files(once, exports.get(i)));
        ImportReport other = twice.take(files(twice, exports.get(i)));

        String what = "seed %d, export %d of %s".formatted(seed, i, exports);
        assertThat(report.tally()).as(what).isEqualTo(other.tally());
        assertThat(report.rows()).as(what).isEqualTo(other.rows());
        assertThat(report.remarks()).as(what).isEqualTo(other.remarks());
        assertThat(once.events()).as(what).isEqualTo(twice.events());
        assertThat(once.log.snapshot().markers())
            .as(what)
            .isEqualTo(twice.log.snapshot().markers());
        assertThat(once.quarantined()).as(what).hasSameSizeAs(twice.quarantined());
        assertThat(once.vault.size()).as(what).isEqualTo(twice.vault.size());
      }
    }
  }

  private static List<Path> files(TestImports imports, RandomFiles.Export export) {
    return IntStream.range(0, export.texts().size())
        .mapToObj(i -> imports.text(i + "-" + export.date() + ".csv", export.texts().get(i)))
        .toList();
  }

  @Test
  void an_export_that_is_refused_when_all_of_it_was_taken_leaves_nothing_behind() {
    TestImports imports =
        new TestImports(folder.resolve("refused"))
            .with(TestImports.PROFILE.replace("rejects: 100 %", "rejects: 10 %"));
    List<String> rows =
        IntStream.range(0, 20)
            .mapToObj(i -> "K%d,9990100000000%02d,Pip,%s,Ada %d".formatted(i, i, day(i), i))
            .toList();
    List<Path> files = List.of(imports.file("2031-01-31.csv", rows));

    assertThatThrownBy(() -> imports.take(files))
        .isInstanceOf(InputRefusedException.class)
        .hasMessageEndingWith("Nothing was changed.");
    assertThat(imports.log.sweep()).isZero();
    assertThat(imports.log.snapshot().markers()).isEmpty();
    assertThat(imports.vault.size()).isZero();
    assertThat(imports.quarantined()).isEmpty();
  }

  /** The last rows, long after the first batch was full, can't be read. */
  private static String day(int row) {
    return row < 15 ? "2031-01-03" : "some day";
  }
}
