package withers.ingest.inspect;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.LongFunction;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.ingest.Inspected;
import withers.ingest.Inspector;
import withers.ingest.pack.PackedFile;

/**
 * Inspect on the demo's exports as other people would write them. {@code
 * -Dwithers.inspect.variants=200} takes as many; the ordinary tests take fewer.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Tag("long")
class InspectScoreTest {

  private static final int VARIANTS = Integer.getInteger("withers.inspect.variants", 40);
  private static final long FIRST = Long.getLong("withers.inspect.first", 0);
  private static final double RIGHT_PERCENT = 95;
  private static final Inspector.Options OPTIONS =
      new Inspector.Options(Optional.empty(), Answers.NONE, 0, false);

  @TempDir Path folder;

  private final List<DemoExports.Export> exports = DemoExports.all();

  @Test
  void recognises_exports_in_other_words_dialects_and_character_sets() {
    Score score = score(seed -> Variant.of(seed, exports));

    System.out.println(score);
    assertThat(score.allRightPercent()).as(score.remarks()).isGreaterThanOrEqualTo(RIGHT_PERCENT);
    assertNothingPreciousIsWrong(score);
    assertThat(score.wrong("(kind)")).as(score.remarks()).isZero();
    assertThat(score.wrong("(delimiter)")).as(score.remarks()).isZero();
  }

  @Test
  void headers_that_say_nothing_lead_to_questions_and_not_to_mistakes() {
    Score score = score(seed -> Variant.of(seed, exports).withoutWords());

    System.out.println(score);
    assertNothingPreciousIsWrong(score);
  }

  private static void assertNothingPreciousIsWrong(Score score) {
    assertThat(score.paths().stream().filter(Score::isPrecious).filter(p -> score.wrong(p) > 0))
        .as(score.remarks())
        .isEmpty();
  }

  private Score score(LongFunction<Variant> variants) {
    Score score = new Score();
    for (long seed = FIRST; seed < FIRST + VARIANTS; seed++) {
      Variant variant = variants.apply(seed);
      VariantFile file = VariantFile.write(folder, variant);
      Inspected found = new Inspector().inspect(PackedFile.plain(file.path()), OPTIONS);
      score.add(variant, file, found.draft());
    }
    return score;
  }
}
