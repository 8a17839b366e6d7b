package withers.ingest.known;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import withers.id.ImportId;
import withers.id.RecordKey;
import withers.ingest.change.ChangeDetector;
import withers.ingest.change.Listings;

/** Keeps an export that was recognised for the most part: what has changed, and the new order. */
final class Renewal implements ChangeDetector.Memo {

  /** Changes may take as much room as this, or half of that of all timelines. */
  private static final long SMALL = 1 << 20;

  private final KnownExport known;
  private final Changes changes;
  private final RecordHash hash;
  private final Map<Long, Integer> plain = new HashMap<>(); // numbers by hash of the key
  private final Set<Integer> unordered = new LinkedHashSet<>();

  Renewal(KnownExport known) {
    this.known = known;
    this.changes = known.changes().copy();
    this.hash = known.newHash();
  }

  /** The hash of a key, which is never 0. */
  static long keyHash(RecordHash hash, byte[] key) {
    long keyHash = hash.shortHash(key);
    return keyHash == 0 ? 1 : keyHash;
  }

  @Override
  public void on(RecordKey key, Supplier<byte[]> timeline, ChangeDetector.Standing standing) {
    int before = known.number(key);
    int number = before >= 0 ? before : changes.nextNumber();
    if (standing.changed()) {
      changes.put(key, number, timeline.get());
    }
    if (standing.listed()) {
      unordered.add(number);
    }
    if (standing.plain()) {
      byte[] bytes = key.value().getBytes(StandardCharsets.UTF_8);
      plain.put(keyHash(hash, bytes), number);
    }
  }

  boolean isWorthIt() {
    return changes.bytes() < Math.max(SMALL, known.stamp().timelines().size() / 2);
  }

  void keep(List<Recognition> recognitions, ImportId parent, LocalDate date, Listings listings)
      throws IOException {
    List<Integer> fileStarts = new ArrayList<>();
    Stamp old = known.stamp();
    Stamp.Part order = order(recognitions, fileStarts);
    known
        .cache()
        .keep(
            new Stamp(
                old.words(),
                parent,
                date,
                old.key(),
                old.start(),
                order,
                old.timelines(),
                fileStarts,
                List.copyOf(unordered),
                listings),
            changes);
  }

  private Stamp.Part order(List<Recognition> recognitions, List<Integer> fileStarts)
      throws IOException {
    if (isAsBefore(recognitions, fileStarts)) {
      return known.stamp().order();
    }
    fileStarts.clear();
    try (Order.Writer writer =
        new Order.Writer(known.cache().folder(), known.cache().newName("order"))) {
      for (Recognition one : recognitions) {
        fileStarts.add(writer.size());
        one.tell(new ToOrder(writer));
      }
      return writer.finish();
    } catch (UncheckedIOException failed) {
      throw failed.getCause();
    }
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

  private final class ToOrder implements Recognition.Parts {
    private final Order.Writer writer;

    ToOrder(Order.Writer writer) {
      this.writer = writer;
    }

    @Override
    public void known(int from, int count) {
      try {
        writer.add(known.order(), from, count);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public void read(long first, long second, long keyHash) {
      Integer number = plain.get(keyHash);
      try {
        if (number != null) {
          writer.add(first, second, number);
          unordered.remove(number);
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
