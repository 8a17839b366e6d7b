package withers.chip;

import java.util.Optional;
import withers.chip.Reading.NoNumber;

/**
 * Reads chip numbers as people and files spell them. docs/chip-numbers.md lists the spellings.
 *
 * <p>Reading is a pure function: it depends on the text and the one setting, never throws, and its
 * work is bounded whatever the length of the text. A reader can be shared between threads.
 */
public final class ChipNumberReader {

  private static final int LONGEST_TEXT = 200;
  private static final int ISO_WIDTH = ChipNumber.Kind.ISO.width;
  private static final long NOT_PLAIN = -1;

  private final IsoRules iso;
  private final DigitsReader digits;
  private final LettersReader letters;
  private final WordReader words;
  private final ScientificNotation scientific;

  /**
   * A reader.
   *
   * @param acceptTestCode whether numbers under 999, the standard's code for tests, are accepted
   *     like others, as a demonstration needs
   */
  public ChipNumberReader(boolean acceptTestCode) {
    iso = new IsoRules(acceptTestCode);
    digits = new DigitsReader(iso);
    letters = new LettersReader(iso, digits);
    words = new WordReader(iso);
    scientific = new ScientificNotation(digits);
  }

  /** What the text says about a chip number. */
  public Reading read(String text) {
    long plain = fifteenDigits(text);
    return plain == NOT_PLAIN || Placeholders.isOfFifteenDigits(plain)
        ? readAnySpelling(text)
        : iso.read(plain);
  }

  private static long fifteenDigits(String text) {
    if (text.length() != ISO_WIDTH) {
      return NOT_PLAIN;
    }
    long value = 0;
    for (int i = 0; i < ISO_WIDTH; i++) {
      int digit = text.charAt(i) - '0';
      if (digit < 0 || digit > 9) {
        return NOT_PLAIN;
      }
      value = value * 10 + digit;
    }
    return value;
  }

  private Reading readAnySpelling(String text) {
    if (text.length() > LONGEST_TEXT) {
      return Refusals.tooLong(text.length());
    }
    return Placeholders.ofText(text)
        .<Reading>map(NoNumber::new)
        .orElseGet(() -> readSpelling(text, Spelling.of(text)));
  }

  private Reading readSpelling(String text, String spelling) {
    Reading one = readOne(text, spelling);
    return one instanceof Reading.Refused
        ? new SeveralNumbers(part -> readOne(part, part)).read(text, spelling).orElse(one)
        : one;
  }

  private Reading readOne(String text, String spelling) {
    Optional<Reading> special =
        scientific.read(text, spelling).or(() -> words.readDotted(text, spelling));
    return special.orElseGet(() -> readUngrouped(text, spelling));
  }

  private Reading readUngrouped(String text, String spelling) {
    String signs = Spelling.ungrouped(spelling);
    if (Ascii.isDigits(signs)) {
      return readDigits(text, signs);
    }
    if (!Ascii.isDigitsAndCapitals(signs)) {
      return Refusals.notANumber(text);
    }
    return isWord(signs) ? words.readSixteen(text, signs) : letters.read(text, signs);
  }

  private Reading readDigits(String text, String signs) {
    Optional<Placeholder> placeholder = Placeholders.ofDigits(signs);
    if (placeholder.isPresent()) {
      return new NoNumber(placeholder.get());
    }
    return isWord(signs) ? words.readSixteen(text, signs) : digits.read(text, signs);
  }

  private static boolean isWord(String signs) {
    return signs.length() == 2 * Long.BYTES && Ascii.isHexadecimal(signs);
  }
}
