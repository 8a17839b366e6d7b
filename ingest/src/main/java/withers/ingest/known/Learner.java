package withers.ingest.known;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import withers.id.RecordKey;
import withers.ingest.change.ChangeDetector;
import withers.ingest.file.ExportFile;

/**
 * Takes note of an export while every row of it is read, so that the next one can be recognised.
 * What it cannot make sense of it gives up quietly: then nothing is kept. Close it, also then.
 */
public final class Learner implements AutoCloseable {

  private final Cache cache;
  private final Circumstances circumstances;
  private final HashKey key;
  private final RecordHash hash;
  private final RowNotes rows;
  private final List<Integer> fileStarts = new ArrayList<>();
  private Optional<FileStart> start = Optional.empty();
  private Optional<RecordsOfFile> file = Optional.empty();
  private boolean givenUp;

  Learner(Cache cache, Circumstances circumstances) {
    this.cache = cache;
    this.circumstances = circumstances;
    this.rows = new RowNotes(cache);
    this.key = cache.newKey();
    this.hash = new RecordHash(key);
    this.givenUp = !circumstances.areSuitable();
  }

  /**
   * Takes a row that was read. Rows of one file come together, in their order.
   *
   * @param line on which the row starts
   * @param stated the row's key when it could be read, and nothing of it was rejected
   */
  public void row(ExportFile from, long line, Optional<RecordKey> stated) {
    try {
      if (!givenUp) {
        note(from, line, stated);
      }
    } catch (IOException | UnrecognisableException e) {
      givenUp = true;
    }
  }

  private void note(ExportFile from, long line, Optional<RecordKey> stated) throws IOException {
    if (file.filter(open -> open.isOf(from)).isEmpty()) {
      begin(from, line);
    }
    RecordsOfFile records = file.orElseThrow();
    records.goTo(line);
    if (stated.isPresent()) {
      RecordScanner record = records.scanner();
      hash.hash(record.bytes(), record.from(), record.to());
      long first = hash.first();
      long second = hash.second();
      byte[] bytes = stated.get().value().getBytes(StandardCharsets.UTF_8);
      rows.add(first, second, hash.shortHash(bytes));
    }
  }

  private void begin(ExportFile from, long line) throws IOException {
    closeFile();
    if (!circumstances.areThoseOf(from)) {
      throw new UnrecognisableException("files of several kinds");
    }
    RecordsOfFile records = RecordsOfFile.open(from, circumstances);
    file = Optional.of(records);
    records.goTo(line);
    FileStart here = RecordsOfFile.start(from, records.scanner().offset(), line, hash);
    if (start.isPresent() && !start.get().equals(here)) {
      throw new UnrecognisableException("files of several headers");
    }
    start = Optional.of(here);
    fileStarts.add(rows.size());
  }

  /**
   * Prepares the export to be kept, if sense could be made of it.
   *
   * @param detector after its conclusion
   */
  public Preparation prepare(ChangeDetector detector) throws IOException {
    if (givenUp || start.isEmpty()) {
      return (parent, date) -> cache.clear();
    }
    try (Timelines.Writer timelines = new Timelines.Writer(cache, key, rows.size());
        OrderWriter order = new OrderWriter(cache)) {
      return prepare(detector, timelines, order);
    } catch (UnrecognisableException e) {
      return (parent, date) -> cache.clear();
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private Preparation prepare(
      ChangeDetector detector, Timelines.Writer timelines, OrderWriter order) throws IOException {
    Standings standings = new Standings();
    detector.remember(
        (key, timeline, standing) -> standings.take(timelines, key, timeline.get(), standing));
    List<Integer> starts = order(timelines, order, standings);
    Stamp.Part orderFile = order.finish();
    Stamp.Part timelineFile = timelines.finish();
    return (parent, newest) ->
        cache.keep(
            new Stamp(
                circumstances.inWords(),
                parent,
                newest,
                key,
                start.orElseThrow(),
                orderFile,
                Optional.empty(),
                List.of(timelineFile),
                starts,
                standings.unordered(),
                standings.isRepeated,
                detector.listings()));
  }

  /** A row is in the order when it says all that its record now says. */
  private List<Integer> order(Timelines.Writer timelines, OrderWriter order, Standings standings)
      throws IOException {
    List<Integer> starts = new ArrayList<>();
    rows.forEach(
        (row, first, second, keyHash) -> {
          while (starts.size() < fileStarts.size() && fileStarts.get(starts.size()) == row) {
            starts.add(order.size());
          }
          int number = timelines.find(keyHash);
          if (standings.isPlain(number)) {
            order.add(first, second, number);
            standings.isOrdered(number);
          }
        });
    return starts;
  }

  /** How records stand, by their numbers. */
  private static final class Standings {
    private final BitSet plain = new BitSet();
    private final BitSet unordered = new BitSet();
    private boolean isRepeated;

    void take(
        Timelines.Writer timelines,
        RecordKey key,
        byte[] timeline,
        ChangeDetector.Standing standing) {
      try {
        int number = timelines.add(key, timeline, false);
        plain.set(number, standing.plain());
        unordered.set(number, standing.listed());
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    boolean isPlain(int number) {
      return number >= 0 && plain.get(number);
    }

    void isOrdered(int number) {
      isRepeated |= !unordered.get(number);
      unordered.clear(number);
    }

    List<Integer> unordered() {
      return unordered.stream().boxed().toList();
    }
  }

  @Override
  public void close() {
    closeFile();
    try {
      rows.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void closeFile() {
    try {
      if (file.isPresent()) {
        file.get().close();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
