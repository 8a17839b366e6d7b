package withers.demo;

import java.time.LocalDate;
import java.util.List;

/** Tells what an organisation's record says in the export of a round. */
@FunctionalInterface
interface Telling {

  /** Once, as it stood on that day; not at all when there was no such record. */
  Telling AS_TYPED = (entry, round, day) -> entry.asOn(day).stream().toList();

  /**
   * The rows of that record, mostly one.
   *
   * @param day of the export
   */
  List<Row> rows(Ledger.Entry entry, Round round, LocalDate day);
}
