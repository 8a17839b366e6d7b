package withers.chip;

import java.util.Optional;
import withers.chip.Reading.Accepted;
import withers.chip.Reading.Tentative;

/** Questions about readings. */
final class Readings {

  private Readings() {}

  /** The number of a reading that names exactly one as it stands. */
  static Optional<ChipNumber> sureNumber(Reading reading) {
    if (reading instanceof Accepted accepted) {
      return Optional.of(accepted.number());
    }
    return reading instanceof Tentative tentative
        ? Optional.of(tentative.number())
        : Optional.empty();
  }
}
