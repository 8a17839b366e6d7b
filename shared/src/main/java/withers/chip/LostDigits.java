package withers.chip;

import java.util.Locale;
import java.util.Optional;

/**
 * A number of which only the first digits survive, as a spreadsheet leaves it: {@code 9.85112E+14},
 * or 985112000000000 once that was saved. It may be any of a range.
 *
 * @param surviving the first digits; the last of them may be rounded up
 * @param lost how many digits followed them, at least 1; together they make 9, 10 or 15
 */
public record LostDigits(String surviving, int lost) {

  /** Zeros at the end of a number from which on they may stand for lost digits. */
  public static final int SUSPICIOUS_ZEROS = 6;

  private static final ChipNumberReader READER = new ChipNumberReader(true);

  /**
   * Checks that digits survive and that a kind of number has as many.
   *
   * @throws IllegalArgumentException if that is not so
   */
  public LostDigits {
    check(surviving, lost);
  }

  static void check(String surviving, int lost) {
    int width = surviving.length() + lost;
    if (!Ascii.isDigits(surviving) || lost < 1 || width != 9 && width != 10 && width != 15) {
      throw new IllegalArgumentException(
          "Expected surviving and lost digits that make 9, 10 or 15, but found '%s' and %d"
              .formatted(surviving, lost));
    }
  }

  /** What survives in a text that was kept as damaged; empty if it has lost no digits. */
  public static Optional<LostDigits> of(String original) {
    return READER.read(original) instanceof Reading.Truncated cut
        ? Optional.of(cut.digits())
        : Optional.empty();
  }

  /**
   * What survives in a number that may have lost digits: an ISO number that ends in at least {@link
   * #SUSPICIOUS_ZEROS} zeros. Empty for any other.
   */
  public static Optional<LostDigits> of(ChipNumber number) {
    if (!endsInZeros(number)) {
      return Optional.empty();
    }
    String digits = number.display();
    String surviving = digits.replaceFirst("0+$", "");
    return Optional.of(new LostDigits(surviving, digits.length() - surviving.length()));
  }

  /** Whether it is an ISO number that ends in at least {@link #SUSPICIOUS_ZEROS} zeros. */
  public static boolean endsInZeros(ChipNumber number) {
    return number.kind() == ChipNumber.Kind.ISO && number.nationalCode() % IsoRules.SIX_ZEROS == 0;
  }

  /** Whether the number is written in decimal digits only: others can't lose any. */
  public static boolean isDecimal(ChipNumber number) {
    return number.kind() != ChipNumber.Kind.TEN_CHARACTER || Ascii.isDigits(number.display());
  }

  /**
   * Whether the number may be the one that was cut short: as many digits, beginning with the
   * surviving ones or rounding to them.
   */
  public boolean admits(ChipNumber number) {
    return range().admits(number);
  }

  /** A number that no admitted one is before, in natural order; not admitted itself, perhaps. */
  public ChipNumber least() {
    return bound(range().least());
  }

  /** A number that no admitted one is after, in natural order; not admitted itself, perhaps. */
  public ChipNumber most() {
    return bound(range().most());
  }

  private DigitRange range() {
    return DigitRange.of(surviving, lost);
  }

  /** The number nearest to these digits among those of the width. */
  private ChipNumber bound(long digits) {
    int width = surviving.length() + lost;
    if (width == ChipNumber.Kind.ISO.width) {
      return isoBound(digits);
    }
    return ChipNumber.parse(String.format(Locale.ROOT, "%0" + width + "d", Math.max(0, digits)));
  }

  private static ChipNumber isoBound(long digits) {
    long code = digits / ChipNumber.NATIONAL_DECIMALS;
    return code < 1
        ? ChipNumber.iso(1, 0)
        : ChipNumber.iso(
            (int) code,
            Math.min(digits % ChipNumber.NATIONAL_DECIMALS, ChipNumber.LARGEST_NATIONAL_CODE));
  }
}
