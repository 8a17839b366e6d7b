package withers.law;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.ingest.ImportReport;
import withers.run.Outcome;

/**
 * From files to findings: exports in any order (older ones by backfill), repeated, or cut into
 * several files of one set, judged by one thread or two, give the same findings to the byte.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
@Tag("long")
class LawOfTheExportsTest {

  private static final int SEEDS = Integer.getInteger("law.seeds", 80);
  private static final int ANIMALS = 25;
  private static final LocalDate AS_OF = LocalDate.of(2026, 11, 2);

  @Test
  void neither_order_nor_repetition_nor_cuts_nor_threads_change_a_byte(@TempDir Path folder)
      throws IOException {
    Set<String> kinds = new HashSet<>();
    for (long seed = 0; seed < SEEDS; seed++) {
      Deliveries exports = new Deliveries(folder.resolve("seed-" + seed), seed, ANIMALS);

      Outcome straight = imported(exports, exports.straight()).outcome(AS_OF, 1);
      Outcome mixed = imported(exports, exports.mixed()).outcome(AS_OF, 1 + (int) (seed % 2));

      assertThat(Desk.canonical(mixed)).as("seed " + seed).isEqualTo(Desk.canonical(straight));
      assertThat(mixed.notJudged()).as("seed " + seed).isEqualTo(straight.notJudged());
      assertThat(mixed.animals()).as("seed " + seed).isEqualTo(straight.animals());
      straight.findings().forEach(finding -> kinds.add(finding.kind().word()));
    }
    assertThat(kinds)
        .as("kinds that the worlds hold")
        .hasSizeGreaterThanOrEqualTo(6)
        .contains("number-damaged");
  }

  @Test
  void recognising_unchanged_records_does_not_change_a_byte(@TempDir Path folder)
      throws IOException {
    long recognised = 0;
    for (long seed = 0; seed < SEEDS / 4; seed++) {
      Deliveries exports = new Deliveries(folder.resolve("seed-" + seed), seed, ANIMALS);
      Desk reading = imported(exports, exports.straight());
      Desk knowing =
          Desk.knowing(exports.workspace(), folder.resolve("seed-" + seed).resolve("kept"));
      for (List<Path> delivery : exports.straight()) {
        recognised +=
            knowing.take(delivery).stream().mapToLong(one -> one.reuse().recognised()).sum();
      }

      assertThat(Desk.canonical(knowing.outcome(AS_OF, 1)))
          .as("seed " + seed)
          .isEqualTo(Desk.canonical(reading.outcome(AS_OF, 1)));
    }
    assertThat(recognised).as("rows recognised").isGreaterThan(SEEDS);
  }

  @Test
  void importing_everything_again_adds_nothing_and_says_so(@TempDir Path folder)
      throws IOException {
    Deliveries exports = new Deliveries(folder, 1, 200);
    Desk desk = imported(exports, exports.straight());
    int markers = desk.markers();

    for (List<Path> delivery : exports.straight()) {
      assertThat(desk.take(delivery))
          .allSatisfy(
              report -> assertThat(report.result()).isEqualTo(ImportReport.Result.IMPORTED_BEFORE));
    }
    for (List<Path> delivery : exports.mixed()) {
      assertThat(desk.take(delivery))
          .allSatisfy(
              report -> assertThat(report.result()).isNotEqualTo(ImportReport.Result.IMPORTED));
    }
    assertThat(desk.markers()).isEqualTo(markers);
  }

  private static Desk imported(Deliveries exports, List<List<Path>> deliveries) {
    Desk desk = new Desk(exports.workspace());
    deliveries.forEach(desk::take);
    return desk;
  }
}
