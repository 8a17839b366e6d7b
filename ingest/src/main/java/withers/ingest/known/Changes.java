package withers.ingest.known;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import withers.id.RecordKey;

/** The timelines that are other than in the file of timelines, and those that are not in it. */
final class Changes {

  /** A record's number and its timeline. */
  static final class Change {
    private final int number;
    private final byte[] timeline;

    Change(int number, byte[] timeline) {
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

  private final int bound;
  private final Map<RecordKey, Change> changes = new LinkedHashMap<>();
  private final Map<Integer, RecordKey> added = new HashMap<>();
  private long bytes;

  /**
   * No changes.
   *
   * @param bound numbers of timelines in the file are less than this
   */
  Changes(int bound) {
    this.bound = bound;
  }

  Changes copy() {
    Changes copy = new Changes(bound);
    changes.forEach((key, change) -> copy.put(key, change.number, change.timeline));
    return copy;
  }

  void put(RecordKey key, int number, byte[] timeline) {
    changes.put(key, new Change(number, timeline));
    bytes += timeline.length;
    if (number >= bound) {
      added.put(number, key);
    }
  }

  /** A number for a record that is not in the file. */
  int nextNumber() {
    return bound + added.size();
  }

  Optional<Change> find(RecordKey key) {
    return Optional.ofNullable(changes.get(key));
  }

  /** The key of a record that is not in the file. */
  RecordKey added(int number) {
    return Optional.ofNullable(added.get(number))
        .orElseThrow(() -> new UnrecognisableException("a number without a record"));
  }

  /** How much was put, in bytes of timelines. */
  long bytes() {
    return bytes;
  }

  void write(DataOutput out) throws IOException {
    out.writeInt(changes.size());
    for (Map.Entry<RecordKey, Change> entry : changes.entrySet()) {
      out.writeUTF(entry.getKey().value());
      out.writeInt(entry.getValue().number);
      out.writeInt(entry.getValue().timeline.length);
      out.write(entry.getValue().timeline);
    }
  }

  static Changes read(DataInput in, int bound) throws IOException {
    Changes read = new Changes(bound);
    int size = in.readInt();
    for (int i = 0; i < size; i++) {
      RecordKey key = new RecordKey(in.readUTF());
      int number = in.readInt();
      byte[] timeline = new byte[in.readInt()];
      in.readFully(timeline);
      read.put(key, number, timeline);
    }
    return read;
  }
}
