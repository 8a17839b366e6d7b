package withers.ingest.change;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Locator;
import withers.fact.Origin;
import withers.fact.Slot;
import withers.fact.Species;
import withers.fact.Subject;
import withers.fact.WithdrawalReason;
import withers.id.RecordKey;
import withers.log.LogSnapshot;
import withers.source.InputRefusedException;

/**
 * Finds out what one export says that its source did not say before, and hands over the events that
 * the log has to hold. Feed it every row, then {@link #conclude}. Not safe for several threads;
 * good for one attempt to import.
 */
public final class ChangeDetector {

  /** The place of statements that no row of the import at hand makes. */
  private static final Locator NO_ROW = new Locator(0, 0);

  private record Restated(RecordKey key, Version version, LocalDate exportDate) {}

  private final SourceLog log;
  private final Export export;
  private final Consumer<ChipEvent> out;
  private final History history;
  private final Comparison comparison;
  private final List<Restated> restated = new ArrayList<>();
  private List<ChipEvent> row = List.of();
  private Optional<Listings> concluded = Optional.empty();

  /**
   * Rebuilds what the source has said so far.
   *
   * @param out takes each event to be written
   */
  public ChangeDetector(LogSnapshot snapshot, Export export, Consumer<ChipEvent> out) {
    this(
        export,
        out,
        new SourceLog(snapshot, export.source()),
        log -> HistoryReader.read(log, export.windowSlot()));
  }

  /**
   * Goes by what was rebuilt before.
   *
   * @param rebuilt what the source has said so far in this log
   * @param out takes each event to be written
   */
  public ChangeDetector(
      LogSnapshot snapshot, Export export, Rebuilt rebuilt, Consumer<ChipEvent> out) {
    this(export, out, new SourceLog(snapshot, export.source()), log -> rebuilt.history());
  }

  /**
   * Goes by what is remembered instead of rebuilding it. Rows that are known to be as they were in
   * the full export before this one need not be fed; each other record of that export must be, or
   * be {@link #expect expected}. The export is a full one, newer than everything said so far.
   *
   * @param remembered all that the source has said so far in this log
   * @param out takes each event to be written
   */
  public ChangeDetector(
      LogSnapshot snapshot, Export export, Remembered remembered, Consumer<ChipEvent> out) {
    this(
        export,
        out,
        new SourceLog(snapshot, export.source()),
        log -> HistoryReader.read(log, remembered));
  }

  private ChangeDetector(
      Export export, Consumer<ChipEvent> out, SourceLog log, Function<SourceLog, History> history) {
    this.log = log;
    this.export = export;
    this.out = out;
    this.history = history.apply(log);
    this.comparison =
        new Comparison(
            this.history, export.date(), export.extent(), export.disappearance(), new Writer());
  }

  /**
   * Takes a row.
   *
   * @param statements all that it says, at least one, at most one for each slot and subject; all of
   *     this key, export date and place
   * @return whether it says something new
   */
  public boolean row(RecordKey key, List<ChipEvent> statements) {
    VersionBuilder version = new VersionBuilder(export.windowSlot());
    for (ChipEvent statement : statements) {
      version.add(statement);
    }
    RecordKey current = history.renames().current(key, (int) export.date().toEpochDay());
    requireExpected(current);
    row = current.equals(key) ? statements : under(current, statements);
    return comparison.accept(current, version.build());
  }

  private void requireExpected(RecordKey key) {
    if (!history.speaksOf(key)) {
      throw new InputRefusedException(
          "Expected files that stay as they are, but found them changed while they were read (%s, %s): try again. Nothing was changed."
              .formatted(export.source(), export.date()));
    }
  }

  private static List<ChipEvent> under(RecordKey key, List<ChipEvent> statements) {
    return statements.stream().map(one -> one.under(key)).toList();
  }

  /**
   * Which of the records that this export misses it holds under new keys. Ask after the last row,
   * before {@link #conclude}; nothing is told of an export that is not full, or not the newest.
   */
  public Rekeying rekeying() {
    return comparison.rekeying();
  }

  /** Hands over the events by which the log keeps records under the new keys of their pairs. */
  public void rekey(Rekeying rekeying, Consumer<ChipEvent> events) {
    rekeying.pairs().forEach((old, now) -> rekey(old, now, events));
  }

  private void rekey(RecordKey old, RecordKey now, Consumer<ChipEvent> events) {
    for (Subject subject : history.timeline(old).subjects()) {
      Origin origin = new Origin(export.source(), old, Slot.LISTING, export.date(), NO_ROW);
      events.accept(new ChipEvent(subject, origin, Optional.empty(), new Fact.Rekeyed(now)));
    }
  }

  /**
   * Takes a row whose key could be read and the rest could not: the record is listed, so that it
   * does not disappear, and what it said before stands.
   */
  public void unreadable(RecordKey key, Locator locator) {
    Origin origin = new Origin(export.source(), key, Slot.ANIMAL, export.date(), locator);
    Fact nothing =
        new Fact.Described(Species.UNSTATED, Optional.empty(), Optional.empty(), Optional.empty());
    row(key, List.of(new ChipEvent(Version.UNREADABLE, origin, Optional.empty(), nothing)));
  }

  /** Takes a remembered record for missing, unless a row brings it. */
  public void expect(RecordKey key) {
    history.timeline(key);
  }

  /**
   * Notes what the export does not hold, and writes out what has to be said again. Call once, after
   * the last row.
   *
   * @return how many records are no longer listed by this export
   */
  public long conclude() {
    long missing = comparison.conclude();
    restate();
    history.snapshots().add(export.date(), export.extent());
    concluded = Optional.of(history.listings());
    return missing;
  }

  private void restate() {
    if (restated.isEmpty()) {
      return;
    }
    Set<Recall.Wanted> wanted = new HashSet<>();
    restated.forEach(one -> wanted.add(new Recall.Wanted(one.key, one.version)));
    Map<Recall.Wanted, List<ChipEvent>> found =
        Recall.read(log, wanted, HistoryReader.renames(log, history));
    for (Restated one : restated) {
      List<ChipEvent> statements = found.get(new Recall.Wanted(one.key, one.version));
      if (statements == null) {
        throw new IllegalStateException("Expected an earlier version on the log, but found none");
      }
      statements.forEach(statement -> out.accept(again(statement, one)));
    }
  }

  private static ChipEvent again(ChipEvent statement, Restated one) {
    Origin was = statement.origin();
    Origin origin = new Origin(was.source(), one.key, was.slot(), one.exportDate, NO_ROW);
    return new ChipEvent(statement.subject(), origin, statement.date(), statement.fact());
  }

  /** How many rows had the key of another row of this export and said something else. */
  public long repeatedKeys() {
    return comparison.repeatedKeys();
  }

  /**
   * What this source's full exports miss, after {@link #conclude}: for each of them, how many of
   * the records that the full export before it listed.
   */
  public Disappearances disappearances() {
    return Disappearances.of(listings());
  }

  /** Takes what is to be remembered of each record. */
  @FunctionalInterface
  public interface Memo {

    /**
     * One record.
     *
     * @param timeline what the source has said of it, for {@link Remembered}
     * @param standing how it stands now
     */
    void on(RecordKey key, Supplier<byte[]> timeline, Standing standing);
  }

  /**
   * How a record stands by its source's last word.
   *
   * @param listed whether it is listed
   * @param plain whether one version says it all, so that a row that says the same says nothing new
   * @param changed whether this import adds to what was remembered of it
   */
  public record Standing(boolean listed, boolean plain, boolean changed) {}

  /**
   * Tells what is to be remembered, of every record in memory, and lets go of each: whoever takes
   * them may need the room. Call last of all, once; only {@link #listings} may be asked after it.
   */
  public void remember(Memo memo) {
    history.drain(
        (key, timeline) ->
            memo.on(
                key,
                () -> TimelineForm.write(timeline),
                new Standing(timeline.isListed(), timeline.isPlain(), timeline.isChanged())));
  }

  /** How many records the full exports list, this one among them, after {@link #conclude}. */
  public Listings listings() {
    return concluded.orElseThrow(() -> new IllegalStateException("Ask after the conclusion"));
  }

  /** Full export dates whose disappearances are to be withheld until confirmed or overtaken. */
  public NavigableSet<LocalDate> withheld(NavigableSet<LocalDate> confirmed) {
    return disappearances().withheld(confirmed);
  }

  /** The newest full export date known before this import. */
  public static Optional<LocalDate> newestFull(LogSnapshot snapshot, Export export) {
    SourceLog log = new SourceLog(snapshot, export.source());
    Snapshots snapshots = new Snapshots();
    log.markers().forEach(marker -> snapshots.add(marker.exportDate(), marker.extent()));
    return snapshots.full().isEmpty()
        ? Optional.empty()
        : Optional.of(LocalDate.ofEpochDay(snapshots.full().last()));
  }

  private final class Writer implements Announcements {

    @Override
    public void state(RecordKey key) {
      row.forEach(out);
    }

    @Override
    public void restate(RecordKey key, Version version, int day) {
      restated.add(new Restated(key, version, LocalDate.ofEpochDay(day)));
    }

    @Override
    public void withdraw(
        RecordKey key, Subject subject, Slot slot, WithdrawalReason reason, int day) {
      out.accept(derived(key, subject, slot, new Fact.Withdrawn(reason), day));
    }

    @Override
    public void noLongerListed(RecordKey key, Subject subject, int day) {
      out.accept(derived(key, subject, Slot.LISTING, new Fact.NoLongerListed(), day));
    }

    private ChipEvent derived(RecordKey key, Subject subject, Slot slot, Fact fact, int day) {
      Origin origin = new Origin(export.source(), key, slot, LocalDate.ofEpochDay(day), NO_ROW);
      return new ChipEvent(subject, origin, Optional.empty(), fact);
    }
  }
}
