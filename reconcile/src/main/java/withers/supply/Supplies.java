package withers.supply;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.custody.Cast;
import withers.fact.Fact;
import withers.history.Fold;
import withers.history.Folded;
import withers.history.Sources;
import withers.history.Stated;
import withers.log.LogSnapshot;

/**
 * All supplies in effect, and which of them names a number. Immutable; safe for several threads.
 */
public final class Supplies {
  private final List<Supply> all;
  private final List<Supply> prepaid;
  private final RangeIndex index;
  private final RangeIndex prepaidIndex;

  /** The supplies, in any order. */
  Supplies(Collection<Supply> supplies) {
    all = supplies.stream().sorted(Supply.ORDER).toList();
    prepaid = all.stream().filter(Supply::prepaid).toList();
    index = index(all);
    prepaidIndex = index(prepaid);
  }

  private static RangeIndex index(List<Supply> supplies) {
    return new RangeIndex(supplies.stream().map(Supply::range).toList());
  }

  /** Reads them from the log. */
  public static Supplies read(LogSnapshot log, Cast cast) {
    List<Folded.Kept> stated = stated(log, cast.sources());
    cast.prepare(stated.stream().map(one -> one.stated().fact()));
    return of(stated, cast);
  }

  /** The statements of the log's supply stream in effect, folded as all statements are. */
  public static List<Folded.Kept> stated(LogSnapshot log, Sources sources) {
    List<Stated> stated = new ArrayList<>();
    log.replay(
        Streams.SUPPLY,
        0,
        sources::hears,
        (event, marker) -> stated.add(new Stated(event, marker)));
    return new Fold(sources)
        .fold(stated).kept().stream()
            .filter(one -> one.stated().fact() instanceof Fact.Supplied)
            .toList();
  }

  /** The supplies that statements tell of, as {@link #stated} gives them. */
  public static Supplies of(List<Folded.Kept> stated, Cast cast) {
    return new Supplies(stated.stream().map(one -> supply(one, cast)).toList());
  }

  private static Supply supply(Folded.Kept kept, Cast cast) {
    Fact.Supplied fact = (Fact.Supplied) kept.stated().fact();
    return Supply.of(kept, cast.who(kept.stated(), fact.purchaser()));
  }

  /** All of them, in order of day, source and key. */
  Stream<Supply> all() {
    return all.stream();
  }

  /** Those that name a number, in order of day, source and key. */
  public Stream<Supply> naming(ChipNumber number) {
    return all().filter(supply -> supply.range().contains(number));
  }

  /** The latest that names a number. */
  public Optional<Supply> latest(ChipNumber number) {
    return index.last(number).stream().mapToObj(all::get).findFirst();
  }

  /** The latest prepaid one that names a number. */
  public Optional<Supply> latestPrepaid(ChipNumber number) {
    return prepaidIndex.last(number).stream().mapToObj(prepaid::get).findFirst();
  }
}
