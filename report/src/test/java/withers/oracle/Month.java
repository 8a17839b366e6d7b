package withers.oracle;

import java.time.LocalDate;
import java.util.List;

/**
 * A monthly round of the scenario, as {@code fixtures/demo/rounds.yaml} has it.
 *
 * @param folder the folder of its exports
 * @param asOf the day that is judged
 */
record Month(String folder, LocalDate asOf) {

  static final Month SEPTEMBER = new Month("2026-09", LocalDate.of(2026, 9, 1));
  static final Month OCTOBER = new Month("2026-10", LocalDate.of(2026, 10, 1));
  static final List<Month> ALL = List.of(SEPTEMBER, OCTOBER);

  /** The months whose exports are there when this one is judged: all up to it. */
  List<Month> upToHere() {
    return ALL.subList(0, ALL.indexOf(this) + 1);
  }
}
