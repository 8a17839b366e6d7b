package withers.matching.form;

import static org.assertj.core.api.Assertions.assertThat;

import com.ibm.icu.text.Transliterator;
import java.text.Normalizer;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** Beside the transform of Latin letters of Unicode's CLDR, as ICU brings it. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class FoldTest {
  private static final Transliterator LATIN = Transliterator.getInstance("Latin-ASCII");
  private static final int LAST_OF_LATIN = 0x24f; // up to the block Latin Extended-B
  private static final int FIRST_ADDITIONAL = 0x1e00; // the block Latin Extended Additional
  private static final int LAST_ADDITIONAL = 0x1eff;

  @Test
  void every_letter_with_accents_folds_as_the_transform_folds_it() {
    long without = letters().filter(this::agrees).count();

    assertThat(without).as("letters that need no transform").isGreaterThan(400);
  }

  @Test
  void words_with_accents_fold_as_the_transform_folds_them() {
    Random random = new Random(20260901);
    for (int i = 0; i < 5_000; i++) {
      agrees(word(random));
    }
  }

  @Test
  void what_is_more_than_such_a_letter_is_left_to_the_transform() {
    for (String other : new String[] {"ŋ", "ƀ", "1\u0301", "\u0301a", "Ж", "α"}) {
      assertThat(Fold.withoutAccents(other)).as(other).isEmpty();
    }
  }

  private boolean agrees(String text) {
    String composed = Normalizer.normalize(text, Normalizer.Form.NFKC);
    Fold.withoutAccents(composed)
        .ifPresent(bare -> assertThat(bare).as(text).isEqualTo(LATIN.transliterate(composed)));
    return Fold.withoutAccents(composed).isPresent();
  }

  private static Stream<String> letters() {
    return IntStream.concat(
            IntStream.rangeClosed(0x80, LAST_OF_LATIN),
            IntStream.rangeClosed(FIRST_ADDITIONAL, LAST_ADDITIONAL))
        .filter(Character::isLetter)
        .mapToObj(Character::toString);
  }

  /** Letters, digits, spaces and hyphens, now and then with one accent or several. */
  private static String word(Random random) {
    String bases = "abcxyzABCXYZ019 -.'ßÆæÐðØøÞþĐđĦħıŁłŒœŋ";
    return IntStream.range(0, 1 + random.nextInt(8))
        .mapToObj(i -> bases.charAt(random.nextInt(bases.length())) + accents(random))
        .collect(Collectors.joining());
  }

  private static String accents(Random random) {
    return random
        .ints(random.nextInt(3), 0x300, 0x370)
        .mapToObj(Character::toString)
        .collect(Collectors.joining());
  }
}
