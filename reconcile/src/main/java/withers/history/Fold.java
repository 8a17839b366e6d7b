package withers.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import withers.cases.Settled;
import withers.fact.Slot.Nature;

/**
 * The law of the fold: what is in effect of a set of statements, whatever their order, however
 * often they came. The sentences stand in docs/findings.md.
 */
public final class Fold {
  private final Sources sources;

  public Fold(Sources sources) {
    this.sources = sources;
  }

  /**
   * Folds the statements about one subject.
   *
   * @param stated statements in any order, repeated or not
   */
  public Folded fold(List<Stated> stated) {
    return fold(stated, List.of());
  }

  /**
   * Folds the statements about one number.
   *
   * @param stated statements in any order, repeated or not
   * @param mistaken what people settled about records that have the number by mistake
   */
  public Folded fold(List<Stated> stated, List<Settled> mistaken) {
    Result result = new Result();
    List<Stated> heard = new ArrayList<>(stated);
    heard.removeIf(one -> !sources.hears(one));
    CurrentKeys keys = CurrentKeys.in(heard);
    List<Stated> ordered = new ArrayList<>(LeftOut.of(mistaken, keys).from(keys.of(heard)));
    ordered.sort(Stated.ORDER);
    for (List<Stated> record : runs(ordered, Stated::isOfRecord)) {
      foldRecord(record, result);
    }
    return new Folded(result.kept, result.turned, mistaken.isEmpty() && isLasting(stated));
  }

  /**
   * Whether all of it counts by itself, now and later: what takes something back, or off a list,
   * may be withheld or confirmed by exports to come, and what lies ahead may come to be heard.
   */
  private boolean isLasting(List<Stated> stated) {
    LocalDate asOf = sources.scope().asOf();
    for (Stated one : stated) {
      if (one.isMark()
          || one.isRekeying()
          || one.exportDate().isAfter(asOf)
          || one.event().day().isAfter(asOf)) {
        return false;
      }
    }
    return true;
  }

  private void foldRecord(List<Stated> record, Result result) {
    Source source = sources.get(record.get(0).source());
    Listing listing = Listing.of(record, source);
    if (source.isRegistry()) {
      listing.changed().ifPresent(result::turn);
    }
    for (List<Stated> slot : runs(believed(record, source), Stated::isOfSlot)) {
      foldSlot(slot, listing.listed(), result);
    }
  }

  /** All of it, as a rule; a loop, since a run comes here for each record that there is. */
  private static List<Stated> believed(List<Stated> record, Source source) {
    for (Stated one : record) {
      if (!Listing.isBelieved(one, record, source)) {
        return record.stream().filter(each -> Listing.isBelieved(each, record, source)).toList();
      }
    }
    return record;
  }

  private void foldSlot(List<Stated> slot, boolean listed, Result result) {
    List<Stated> standing = new ArrayList<>();
    for (Stated next : slot) {
      if (next.isWithdrawal()) {
        takeBack(standing, next, result);
      } else if (!next.isDisappearance() && isNew(next, standing)) {
        standing.add(next);
      }
    }
    boolean corrects = slot.get(0).slot().nature() == Nature.CORRECTS;
    int from = corrects ? Math.max(0, standing.size() - 1) : 0;
    for (Stated one : standing.subList(from, standing.size())) {
      if (isTrueBy(one)) {
        result.kept.add(new Folded.Kept(one, listed));
      }
    }
  }

  /** The same may be taken back again and again: only the first time changes anything. */
  private static void takeBack(List<Stated> standing, Stated withdrawal, Result result) {
    if (!standing.isEmpty()) {
      result.turn(withdrawal.exportDate());
    }
    standing.clear();
  }

  private static boolean isNew(Stated next, List<Stated> standing) {
    return standing.isEmpty() || !next.saysTheSame(standing.get(standing.size() - 1));
  }

  private boolean isTrueBy(Stated stated) {
    return !stated.event().day().isAfter(sources.scope().asOf());
  }

  /** Cuts an ordered list into runs of elements that belong together. */
  private static List<List<Stated>> runs(List<Stated> ordered, BiPredicate<Stated, Stated> joined) {
    List<List<Stated>> runs = new ArrayList<>();
    int start = 0;
    for (int i = 1; i <= ordered.size(); i++) {
      if (i == ordered.size() || !joined.test(ordered.get(start), ordered.get(i))) {
        runs.add(ordered.subList(start, i));
        start = i;
      }
    }
    return runs;
  }

  private static final class Result {
    private final List<Folded.Kept> kept = new ArrayList<>();
    private Optional<LocalDate> turned = Optional.empty();

    void turn(LocalDate date) {
      turned = turned.filter(date::isBefore).or(() -> Optional.of(date));
    }
  }
}
