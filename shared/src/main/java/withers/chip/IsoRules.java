package withers.chip;

import static withers.chip.CountryCodes.Status.NEVER_VALID;
import static withers.chip.CountryCodes.Status.TEST;
import static withers.chip.CountryCodes.Status.UNASSIGNED;
import static withers.chip.CountryCodes.Status.WITHDRAWN;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import withers.chip.CountryCodes.Status;
import withers.chip.Reading.Accepted;

/** Which codes and national codes make an ISO number, and which of them are odd. */
record IsoRules(boolean acceptTestCode) {

  static final long SIX_ZEROS = 1_000_000;
  private static final Set<Warning> NO_WARNING = Set.of();

  Reading read(long fifteenDigits) {
    return read(
        (int) (fifteenDigits / ChipNumber.NATIONAL_DECIMALS),
        fifteenDigits % ChipNumber.NATIONAL_DECIMALS);
  }

  Optional<ChipNumber> given(long fifteenDigits) {
    return given(
        (int) (fifteenDigits / ChipNumber.NATIONAL_DECIMALS),
        fifteenDigits % ChipNumber.NATIONAL_DECIMALS);
  }

  Reading read(int code, long nationalCode) {
    Status status = CountryCodes.status(code);
    if (nationalCode > ChipNumber.LARGEST_NATIONAL_CODE) {
      return Refusals.nationalCodeBeyond38Bits(nationalCode);
    }
    if (status == NEVER_VALID) {
      return Refusals.invalidCountryCode(code);
    }
    if (status == TEST && !acceptTestCode) {
      return Refusals.testCode();
    }
    return new Accepted(ChipNumber.iso(code, nationalCode), warnings(status, nationalCode));
  }

  /** The number, if it is one and its code was given to someone once. */
  Optional<ChipNumber> given(int code, long nationalCode) {
    return CountryCodes.status(code) != UNASSIGNED
            && read(code, nationalCode) instanceof Accepted accepted
        ? Optional.of(accepted.number())
        : Optional.empty();
  }

  /** Whether any number of the range is one whose code was given to someone once. */
  boolean isAnyGiven(DigitRange range) {
    return IntStream.rangeClosed(range.leastCode(), range.mostCode())
        .anyMatch(code -> given(code, range.leastNationalCode(code)).isPresent());
  }

  private static Set<Warning> warnings(Status status, long nationalCode) {
    boolean withoutCountry = status == WITHDRAWN || status == UNASSIGNED;
    boolean cutShort = nationalCode % SIX_ZEROS == 0;
    return withoutCountry || cutShort ? warnings(withoutCountry, cutShort) : NO_WARNING;
  }

  private static Set<Warning> warnings(boolean withoutCountry, boolean cutShort) {
    Set<Warning> warnings = EnumSet.noneOf(Warning.class);
    if (withoutCountry) {
      warnings.add(Warning.WITHDRAWN_OR_UNASSIGNED_COUNTRY_CODE);
    }
    if (cutShort) {
      warnings.add(Warning.SIX_OR_MORE_TRAILING_ZEROS);
    }
    return warnings;
  }
}
