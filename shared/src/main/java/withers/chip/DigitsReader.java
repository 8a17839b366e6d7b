package withers.chip;

import java.util.List;
import java.util.Set;
import withers.chip.Reading.Accepted;
import withers.chip.Reading.Guessed;
import withers.chip.Reading.Refused;
import withers.chip.Reading.Tentative;
import withers.chip.Reading.Truncated;

/** Reads texts that are decimal digits and nothing else. */
record DigitsReader(IsoRules iso) {

  private static final int ISO_WIDTH = ChipNumber.Kind.ISO.width;
  private static final int ZEROS_OF_A_CUT_NUMBER = 6;

  Reading read(String original, String digits) {
    return switch (digits.length()) {
      case 15 -> iso.read(Long.parseLong(digits));
      case 9 -> new Accepted(ChipNumber.parse(digits), Set.of());
      case 10 ->
          new Tentative(
              ChipNumber.parse(digits),
              "ten digits may also be a phone number, or an ISO number cut short");
      case 8 -> zerosRestored(original, ChipNumber.parse("0" + digits));
      case 13, 14 -> withZerosRestored(original, digits);
      default -> Refusals.wrongLength(digits.length());
    };
  }

  /**
   * Reads digits after which others are lost.
   *
   * @param surviving the first digits
   * @param count how many digits the number had as it was written: no more than are surviving and
   *     lost together, and fewer if it had lost leading zeros
   */
  Reading readTruncated(String original, String surviving, int count) {
    return switch (count) {
      case 9, 10 -> new Truncated(original, surviving, count - surviving.length());
      case 13, 14, 15 -> readTruncatedIso(original, surviving, count);
      default -> Refusals.wrongLength(count);
    };
  }

  private Reading readTruncatedIso(String original, String surviving, int count) {
    int lost = count - surviving.length();
    String restored = "0".repeat(ISO_WIDTH - count) + surviving;
    Reading literal =
        count == ISO_WIDTH
            ? iso.read(Long.parseLong(surviving + "0".repeat(lost)))
            : Refusals.wrongLength(count);
    return literal instanceof Refused && !iso.isAnyGiven(DigitRange.of(restored, lost))
        ? literal
        : new Truncated(original, restored, lost);
  }

  private Reading withZerosRestored(String original, String digits) {
    String significant = digits.replaceFirst("0+$", "");
    if (digits.length() - significant.length() >= ZEROS_OF_A_CUT_NUMBER) {
      return readTruncatedIso(original, significant, digits.length());
    }
    return iso.given(Long.parseLong(digits))
        .map(number -> zerosRestored(original, number))
        .orElseGet(() -> Refusals.wrongLength(digits.length()));
  }

  private static Reading zerosRestored(String original, ChipNumber number) {
    return new Guessed(original, List.of(new Candidate(number, Repair.LEADING_ZEROS_RESTORED)));
  }
}
