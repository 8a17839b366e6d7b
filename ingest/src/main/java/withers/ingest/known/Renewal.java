package withers.ingest.known;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import withers.id.RecordKey;
import withers.ingest.change.ChangeDetector;
import withers.ingest.change.Listings;

/**
 * Prepares an export to be kept that was recognised for the most part: what has changed, and the
 * new order. Close it, whatever became of it.
 */
final class Renewal implements ChangeDetector.Memo, AutoCloseable {

  /** Changes may take as much room as this, or half of that of all timelines. */
  private static final long SMALL = 1 << 20;

  private final KnownExport known;
  private final Stamp last;
  private final RecordHash hash;
  private final KeyIndex plain = new KeyIndex(); // numbers by hash of the key
  private final BitSet unordered = new BitSet();
  private Optional<TimelineFiles.Changes> changes = Optional.empty();
  private boolean isRepeated;

  Renewal(KnownExport known) {
    this.known = known;
    this.last = known.stamp();
    this.hash = known.newHash();
    this.isRepeated = last.isRepeated();
  }

  /** The hash of a key, which is never 0. */
  static long keyHash(RecordHash hash, byte[] key) {
    long keyHash = hash.shortHash(key);
    return keyHash == 0 ? 1 : keyHash;
  }

  @Override
  public void on(RecordKey key, Supplier<byte[]> timeline, ChangeDetector.Standing standing) {
    if (standing.changed() || standing.listed()) {
      int number = standing.changed() ? add(key, timeline.get()) : number(key);
      if (standing.listed()) {
        unordered.set(number);
      }
      if (standing.plain()) {
        byte[] bytes = key.value().getBytes(StandardCharsets.UTF_8);
        plain.add(keyHash(hash, bytes), number);
      }
    }
  }

  private int add(RecordKey key, byte[] timeline) {
    try {
      if (changes.isEmpty()) {
        changes = Optional.of(known.timelines().changes(known.cache(), last.key()));
      }
      return changes.get().add(key, timeline);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private int number(RecordKey key) {
    return known
        .find(key)
        .map(TimelineFiles.Entry::number)
        .orElseThrow(() -> new UnrecognisableException("a record that is not in its place"));
  }

  /** Writes what has changed. Not kept is what has changed so much that it is not worth it. */
  Preparation prepare(List<Recognition> recognitions, Listings listings) throws IOException {
    List<Stamp.Part> timelines =
        changes.isPresent() ? changes.get().finish(last.timelines()) : last.timelines();
    if (!isWorthIt(timelines)) {
      return (parent, date) -> known.cache().clear();
    }
    List<Integer> fileStarts = new ArrayList<>();
    OrderDraft.Written order = order(recognitions, fileStarts);
    return (parent, date) ->
        known
            .cache()
            .keep(
                new Stamp(
                    last.words(),
                    parent,
                    date,
                    last.key(),
                    last.start(),
                    order.file(),
                    order.changes(),
                    timelines,
                    fileStarts,
                    unordered.stream().boxed().toList(),
                    isRepeated,
                    listings));
  }

  private static boolean isWorthIt(List<Stamp.Part> timelines) {
    long changes = timelines.stream().skip(1).mapToLong(Stamp.Part::size).sum();
    return changes < Math.max(SMALL, timelines.get(0).size() / 2);
  }

  private OrderDraft.Written order(List<Recognition> recognitions, List<Integer> fileStarts)
      throws IOException {
    if (isAsBefore(recognitions, fileStarts)) {
      return new OrderDraft.Written(last.order(), last.orderChanges());
    }
    fileStarts.clear();
    OrderDraft draft = new OrderDraft(known.order());
    for (Recognition one : recognitions) {
      fileStarts.add(draft.size());
      one.tell(new ToOrder(draft));
    }
    return draft.write(known.cache(), last.order());
  }

  /** Whether the files have the records of the last export, all, in order, and no others. */
  private boolean isAsBefore(List<Recognition> recognitions, List<Integer> fileStarts) {
    Straight straight = new Straight();
    for (Recognition one : recognitions) {
      fileStarts.add(straight.next);
      one.tell(straight);
    }
    return straight.isStraight && straight.next == known.order().size();
  }

  private static final class Straight implements Recognition.Parts {
    private int next;
    private boolean isStraight = true;

    @Override
    public void known(int from, int count) {
      isStraight &= from == next;
      next += count;
    }

    @Override
    public void read(long first, long second, long keyHash) {
      isStraight = false;
    }
  }

  /** A row that was read is in the order when it says all that its record now says. */
  private final class ToOrder implements Recognition.Parts {
    private final OrderDraft draft;

    ToOrder(OrderDraft draft) {
      this.draft = draft;
    }

    @Override
    public void known(int from, int count) {
      draft.addKnown(from, count);
    }

    @Override
    public void read(long first, long second, long keyHash) {
      int number = plain.find(keyHash);
      if (number >= 0) {
        draft.add(first, second, number);
        isRepeated |= !unordered.get(number);
        unordered.clear(number);
      }
    }
  }

  @Override
  public void close() throws IOException {
    if (changes.isPresent()) {
      changes.get().close();
    }
  }
}
