package withers.chip;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What people write where there is no number. */
final class Placeholders {

  private static final Map<String, Placeholder> WORDS = words();
  private static final List<Integer> LENGTHS_OF_NUMBERS = List.of(9, 10, 15);
  private static final String COUNTING = "01234567890123456789";
  private static final int FEWEST_NINES = 3;

  private Placeholders() {}

  /** A placeholder of words, marks or nothing. */
  static Optional<Placeholder> ofText(String text) {
    if (Spelling.isBlank(text)) {
      return Optional.of(Placeholder.BLANK);
    }
    // No word of the table has a digit in it, and most texts that are not plain numbers have some.
    if (text.codePoints().anyMatch(Character::isDigit)) {
      return Optional.empty();
    }
    String words = folded(text);
    return words.isEmpty() ? Optional.of(Placeholder.MARKS) : Optional.ofNullable(WORDS.get(words));
  }

  /** A placeholder of digits. */
  static Optional<Placeholder> ofDigits(String digits) {
    if (digits.chars().allMatch(c -> c == digits.charAt(0))) {
      return ofOneDigit(digits.charAt(0), digits.length());
    }
    return isCountedUp(digits) ? Optional.of(Placeholder.COUNTED_UP) : Optional.empty();
  }

  /** The same question about fifteen digits, for the fast path. */
  static boolean isOfFifteenDigits(long value) {
    return value % 111_111_111_111_111L == 0
        || value == 123_456_789_012_345L
        || value == 12_345_678_901_234L;
  }

  private static Optional<Placeholder> ofOneDigit(char digit, int length) {
    if (digit == '0') {
      return Optional.of(Placeholder.ZEROS);
    }
    if (digit == '9' && length >= FEWEST_NINES) {
      return Optional.of(Placeholder.NINES);
    }
    return LENGTHS_OF_NUMBERS.contains(length)
        ? Optional.of(Placeholder.REPEATED_DIGIT)
        : Optional.empty();
  }

  private static boolean isCountedUp(String digits) {
    int length = digits.length();
    return LENGTHS_OF_NUMBERS.contains(length)
        && (COUNTING.startsWith(digits) || COUNTING.startsWith(digits, 1));
  }

  /** Small letters without accents and digits, in words with one space between. */
  private static String folded(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKD)
        .replaceAll("\\p{Mn}", "")
        .toLowerCase(Locale.ROOT)
        .replaceAll("[^\\p{L}\\p{N}]+", " ")
        .strip();
  }

  private static Map<String, Placeholder> words() {
    return Table.rows("placeholder-words.tsv").stream()
        .collect(
            Collectors.toUnmodifiableMap(
                row -> folded(row[1]), row -> Placeholder.valueOf(row[0])));
  }
}
