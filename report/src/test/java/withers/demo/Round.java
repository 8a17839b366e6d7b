package withers.demo;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * One month of the scenario.
 *
 * @param number from 1
 * @param folder the folder of its exports
 * @param asOf the day that its run judges
 */
record Round(int number, String folder, LocalDate asOf) {

  static final List<Round> ALL =
      List.of(
          new Round(1, "2026-09", LocalDate.of(2026, 9, 1)),
          new Round(2, "2026-10", LocalDate.of(2026, 10, 1)));

  /** The first day that the records of the coast reach back to. */
  static final LocalDate DAWN = LocalDate.of(2021, 1, 1);

  static Optional<Round> before(Round round) {
    return round.number() == 1 ? Optional.empty() : Optional.of(ALL.get(round.number() - 2));
  }

  static Round first() {
    return ALL.get(0);
  }

  static Round last() {
    return ALL.get(ALL.size() - 1);
  }
}
