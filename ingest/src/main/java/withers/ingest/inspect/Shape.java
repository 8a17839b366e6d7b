package withers.ingest.inspect;

import java.util.regex.Pattern;
import withers.chip.ChipNumber;
import withers.chip.ChipNumberReader;
import withers.chip.Reading;

/** What a cell looks like, whatever its column is called. A cell can look like several things. */
enum Shape {
  /** Fifteen digits, grouped or not, that ISO 11784 allows. */
  ISO_CHIP,
  /** Another spelling of a chip number: older kinds, and damaged ones. */
  OTHER_CHIP,
  DAY,
  PHONE,
  EMAIL,
  POSTCODE,
  /** A street with a house number. */
  STREET,
  /** Letters and digits without a blank, such as numbers of records. */
  CODE,
  /** One word that starts with a capital or has no case. */
  ONE_WORD,
  /** Two to five words without digits. */
  WORDS,
  /** Words with a comma between: a family name and a given name. */
  COMMA_NAME;

  // Numbers under the test code count as what they look like; the workspace decides later.
  private static final ChipNumberReader CHIPS = new ChipNumberReader(true);
  private static final int FEWEST_DIGITS = 6;
  private static final Pattern MAIL = Pattern.compile("[^@\\s<>]+@[^@\\s<>]+\\.[^@\\s<>.]+");
  private static final Pattern PHONES =
      Pattern.compile("\\+?[0-9()][0-9 ()./-]{4,18}[0-9](?: ?(?:x|ext\\.?) ?[0-9]{1,5})?");
  private static final Pattern POSTCODES =
      Pattern.compile(
          "[0-9]{4,5}(?:-[0-9]{3,4})?|[A-Za-z]{1,3}[- ]?[0-9]{2,5}|[0-9]{4} ?[A-Za-z]{2}"
              + "|[A-Za-z]{1,2}[0-9][0-9A-Za-z]? ?[0-9][A-Za-z]{2}|[A-Za-z][0-9][A-Za-z] ?[0-9][A-Za-z][0-9]");
  private static final Pattern STREETS =
      Pattern.compile(
          "[0-9]{1,5}[A-Za-z]?,? .*\\p{L}{3,}.*|.*\\p{L}{3,}.*[ ,][0-9]{1,5} ?[A-Za-z]?(?:[-/ ].{0,6})?");
  private static final Pattern CODES =
      Pattern.compile("(?=.*[0-9])[\\p{L}]{0,5}[-_/.]?[0-9][0-9A-Za-z_/.-]{0,13}");
  private static final Pattern WORD = Pattern.compile("[\\p{Lu}\\p{Lo}?][\\p{L}\\p{M}'’?-]*");
  private static final Pattern SEVERAL =
      Pattern.compile("[\\p{L}?][\\p{L}\\p{M}'’?.&-]*(?: [\\p{L}?&][\\p{L}\\p{M}'’?.-]*){1,4}");
  private static final Pattern COMMA =
      Pattern.compile("[\\p{L}?][\\p{L}\\p{M}'’?. -]*, ?[\\p{L}?][\\p{L}\\p{M}'’?. -]*");

  boolean fits(String cell) {
    return switch (this) {
      case ISO_CHIP -> isIsoChip(cell);
      case OTHER_CHIP -> isOtherChip(cell);
      case DAY -> DayText.of(cell).isPresent();
      case PHONE -> isPhone(cell);
      case EMAIL -> MAIL.matcher(cell).matches();
      case POSTCODE -> POSTCODES.matcher(cell).matches();
      case STREET -> STREETS.matcher(cell).matches();
      case CODE -> CODES.matcher(cell).matches() && DayText.of(cell).isEmpty();
      case ONE_WORD -> WORD.matcher(cell).matches();
      case WORDS -> SEVERAL.matcher(cell).matches();
      case COMMA_NAME -> COMMA.matcher(cell).matches();
    };
  }

  private static long digits(String cell) {
    return cell.chars().filter(Character::isDigit).count();
  }

  private static boolean isIsoChip(String cell) {
    return digits(cell) >= FEWEST_DIGITS
        && CHIPS.read(cell) instanceof Reading.Accepted accepted
        && accepted.number().kind() == ChipNumber.Kind.ISO;
  }

  private static boolean isOtherChip(String cell) {
    if (digits(cell) < FEWEST_DIGITS || DayText.of(cell).isPresent()) {
      return false;
    }
    Reading reading = CHIPS.read(cell);
    return switch (reading.kind()) {
      case ACCEPTED -> !isIsoChip(cell);
      case GUESSED, TRUNCATED -> true;
      case TENTATIVE, NO_NUMBER, REFUSED -> false;
    };
  }

  private static boolean isPhone(String cell) {
    long digits = digits(cell);
    return digits >= FEWEST_DIGITS + 1
        && digits <= 14
        && PHONES.matcher(cell).matches()
        && DayText.of(cell).isEmpty()
        && !isIsoChip(cell);
  }
}
