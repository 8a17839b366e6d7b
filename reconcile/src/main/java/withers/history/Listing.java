package withers.history;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Whether a record is still on its source's list.
 *
 * @param listed whether it is
 * @param changed the export date at which it went off the list for the last time, or came back
 *     after that; empty when it was always there
 */
record Listing(boolean listed, Optional<LocalDate> changed) {

  private static final Listing ALWAYS = new Listing(true, Optional.empty());

  /**
   * @param record all statements of one record, in any order
   */
  static Listing of(List<Stated> record, Source source) {
    TreeSet<LocalDate> gone = new TreeSet<>();
    for (Stated one : record) {
      if (one.isDisappearance()) {
        inEffect(one.exportDate(), record, source).ifPresent(gone::add);
      }
    }
    return gone.isEmpty() ? ALWAYS : after(gone, stated(record));
  }

  /**
   * Whether a statement counts: a cancellation that a source tells by leaving the record out is
   * withheld, and takes effect, as the disappearance that it comes with.
   *
   * @param record all statements of its record
   */
  static boolean isBelieved(Stated one, List<Stated> record, Source source) {
    return !one.isCancellation() || inEffect(one.exportDate(), record, source).isPresent();
  }

  private static boolean isTakenBack(LocalDate gone, List<Stated> record) {
    return record.stream().anyMatch(s -> s.isStillListed() && s.exportDate().equals(gone));
  }

  private static TreeSet<LocalDate> stated(List<Stated> record) {
    TreeSet<LocalDate> stated = new TreeSet<>();
    record.stream().filter(s -> !s.isMark()).map(Stated::exportDate).forEach(stated::add);
    return stated;
  }

  /** A record that is off the list may be told so again and again: it went off when first told. */
  private static Listing after(TreeSet<LocalDate> gone, TreeSet<LocalDate> stated) {
    LocalDate back = stated.ceiling(gone.last());
    if (back != null) {
      return new Listing(true, Optional.of(back));
    }
    LocalDate lastStated = stated.floor(gone.last());
    LocalDate off = lastStated == null ? gone.first() : gone.higher(lastStated);
    return new Listing(false, Optional.of(off));
  }

  /** When a disappearance takes effect, if it does: on one date presence outranks it. */
  private static Optional<LocalDate> inEffect(LocalDate gone, List<Stated> record, Source source) {
    TreeSet<LocalDate> stated = stated(record);
    if (stated.contains(gone) || isTakenBack(gone, record)) {
      return Optional.empty();
    }
    if (!source.withheld().contains(gone)) {
      return Optional.of(gone);
    }
    return Optional.ofNullable(source.full().higher(gone))
        .filter(next -> stated.subSet(gone, false, next, true).isEmpty());
  }
}
