package withers.ingest.known;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import withers.id.RecordKey;

/**
 * The timelines of a source's records: a file of all as they were once, and small ones of those
 * that are new or have changed since. The entry in the latest file counts. Numbers go on from file
 * to file, so that an entry's number stays when the small files are joined.
 */
final class TimelineFiles implements AutoCloseable {

  /** A record and what is known of it. */
  static final class Entry {
    private final int number;
    private final byte[] timeline;

    Entry(int number, byte[] timeline) {
      this.number = number;
      this.timeline = timeline;
    }

    int number() {
      return number;
    }

    byte[] timeline() {
      return timeline;
    }
  }

  private static final int NONE = -1;

  /** With more files of changes, looking into one after another takes longer than joining them. */
  private static final int MOST_CHANGES = 8;

  private final List<Timelines> files;
  private final RecordHash hash;
  private final Numbers starts = new Numbers();
  private final int bound;

  private TimelineFiles(List<Timelines> files, RecordHash hash) {
    this.files = files;
    this.hash = hash;
    int next = 0;
    for (Timelines file : files) {
      starts.add(next);
      next = Math.addExact(next, file.bound());
    }
    this.bound = next;
  }

  static TimelineFiles open(Path folder, List<Stamp.Part> parts, HashKey key) throws IOException {
    List<Timelines> files = new ArrayList<>();
    for (Stamp.Part part : parts) {
      files.add(Timelines.open(folder, part));
    }
    return new TimelineFiles(files, new RecordHash(key));
  }

  /** Numbers are less than this. */
  int bound() {
    return bound;
  }

  Optional<Entry> find(RecordKey key) {
    byte[] name = Timelines.bytes(key);
    long nameHash = hash.shortHash(name);
    for (int file = files.size() - 1; file >= 0; file--) {
      Optional<Entry> found = files.get(file).find(name, nameHash, starts.get(file));
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  RecordKey key(int number) {
    int file = file(number);
    return files.get(file).key(number - starts.get(file));
  }

  Entry entry(int number) {
    int file = file(number);
    return new Entry(number, files.get(file).timeline(number - starts.get(file)));
  }

  private int file(int number) {
    int found = starts.find(number);
    return found >= 0 ? found : -found - 2;
  }

  /** Begins another file of changes, to be added to the others or, when those are many, joined. */
  Changes changes(Cache cache, HashKey key) throws IOException {
    boolean joins = files.size() > MOST_CHANGES;
    Changes changes =
        new Changes(cache, key, joins ? starts.get(1) : bound, joins ? 1 : files.size());
    try {
      for (Timelines file : files.subList(changes.kept, files.size())) {
        file.tell(changes);
      }
      return changes;
    } catch (IOException | RuntimeException failed) {
      changes.close();
      throw failed;
    }
  }

  @Override
  public void close() throws IOException {
    for (Timelines file : files) {
      file.close();
    }
  }

  /** A file of changes that is being written. */
  final class Changes implements Timelines.Entries, AutoCloseable {

    private final int start;
    private final int kept;
    private final Timelines.Writer writer;

    private Changes(Cache cache, HashKey key, int start, int kept) throws IOException {
      this.start = start;
      this.kept = kept;
      this.writer = new Timelines.Writer(cache, key, 0);
    }

    @Override
    public int add(RecordKey key, byte[] timeline) throws IOException {
      int before = writer.find(key);
      if (before != NONE && !key(start + before).equals(key)) {
        throw new UnrecognisableException("two keys with one hash");
      }
      return start + writer.add(key, timeline, before != NONE);
    }

    /** All files, with this one. */
    List<Stamp.Part> finish(List<Stamp.Part> last) throws IOException {
      List<Stamp.Part> parts = new ArrayList<>(last.subList(0, kept));
      parts.add(writer.finish());
      return parts;
    }

    @Override
    public void close() throws IOException {
      writer.close();
    }
  }
}
