package withers.ingest.known;

import java.io.IOException;
import java.util.Optional;

/** The order of an export put together from parts of the last one and what is new in it. */
final class OrderDraft {

  /** What has changed may be as large as this part of the file; else all is written anew. */
  private static final int PART = 10;

  /** The files of an order, see {@link Order#open}. */
  record Written(Stamp.Part file, Optional<Stamp.Part> changes) {}

  private final Order last;
  private final Order.Cursor lastEntries;
  private final OrderParts parts = new OrderParts();
  private final Longs firsts = new Longs();
  private final Longs seconds = new Longs();
  private final Numbers numbers = new Numbers();

  OrderDraft(Order last) {
    this.last = last;
    this.lastEntries = last.cursor();
  }

  int size() {
    return parts.size();
  }

  void add(long first, long second, int number) {
    parts.add(numbers.size(), 1, true);
    firsts.add(first);
    seconds.add(second);
    numbers.add(number);
  }

  /** Adds entries of the last order. */
  void addKnown(int place, int count) {
    OrderParts known = last.parts();
    int end = place + count;
    int part = known.find(place, 0);
    for (int from = place; from < end; part++) {
      int to = Math.min(end, known.start(part) + known.length(part));
      if (known.isFresh(part)) {
        copy(from, to);
      } else {
        parts.add(known.at(part) + from - known.start(part), to - from, false);
      }
      from = to;
    }
  }

  private void copy(int from, int to) {
    for (int at = from; at < to; at++) {
      add(lastEntries.first(at), lastEntries.second(at), lastEntries.number(at));
    }
  }

  /**
   * Writes what has changed, or all of it when that is much.
   *
   * @param file the one that the last order goes back to
   */
  Written write(Cache cache, Stamp.Part file) throws IOException {
    try (OrderWriter writer = new OrderWriter(cache)) {
      if (isSmall()) {
        addFresh(writer, 0, numbers.size());
        return new Written(file, Optional.of(writer.finish(parts)));
      }
      for (int part = 0; part < parts.count(); part++) {
        add(writer, part);
      }
      return new Written(writer.finish(), Optional.empty());
    }
  }

  private boolean isSmall() {
    long size = (long) numbers.size() * Order.ENTRY + (long) parts.count() * OrderParts.ENTRY;
    return size * PART < (long) last.fileSize() * Order.ENTRY;
  }

  private void add(OrderWriter writer, int part) throws IOException {
    int at = parts.at(part);
    if (parts.isFresh(part)) {
      addFresh(writer, at, at + parts.length(part));
    } else {
      writer.add(last, at, parts.length(part));
    }
  }

  private void addFresh(OrderWriter writer, int from, int to) throws IOException {
    for (int i = from; i < to; i++) {
      writer.add(firsts.get(i), seconds.get(i), numbers.get(i));
    }
  }
}
