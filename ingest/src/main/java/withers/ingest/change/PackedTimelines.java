package withers.ingest.change;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.Optional;
import java.util.function.BiConsumer;
import withers.codec.ByteReader;
import withers.codec.Bytes;
import withers.id.RecordKey;

/**
 * Timelines of records, each as bytes while nobody looks at it: some 60 bytes for a record of which
 * one thing was told, where objects take 310.
 */
final class PackedTimelines {

  private static final int SEEN = 1;
  private static final int CHANGED = 2;

  private final PackedMap map = new PackedMap();

  /** The timeline of a record as it was last kept. */
  Optional<Timeline> find(RecordKey key) {
    return map.get(bytes(key)).map(PackedTimelines::unpack);
  }

  void keep(RecordKey key, Timeline timeline) {
    map.put(bytes(key), pack(timeline));
  }

  /** Shows all. Meanwhile the one that is shown may be kept anew, and no other. */
  void forEach(BiConsumer<RecordKey, Timeline> visitor) {
    map.forEach((key, value) -> visitor.accept(key(key), unpack(value)));
  }

  /** Shows all, and lets go of them meanwhile: they are good for nothing after that. */
  void drain(BiConsumer<RecordKey, Timeline> visitor) {
    map.drain((key, value) -> visitor.accept(key(key), unpack(value)));
  }

  /** A key as a map of bytes takes it. */
  static byte[] bytes(RecordKey key) {
    return key.value().getBytes(UTF_8);
  }

  static RecordKey key(byte[] bytes) {
    return new RecordKey(new String(bytes, UTF_8));
  }

  private static byte[] pack(Timeline timeline) {
    Bytes out = new Bytes();
    out.unsigned((timeline.isSeen() ? SEEN : 0) | (timeline.isChanged() ? CHANGED : 0));
    TimelineForm.write(timeline, out);
    return out.toArray();
  }

  private static Timeline unpack(byte[] value) {
    ByteReader in = new ByteReader(value);
    long marks = in.unsigned();
    Timeline timeline = TimelineForm.read(in);
    if ((marks & SEEN) != 0) {
      timeline.markSeen();
    }
    if ((marks & CHANGED) == 0) {
      timeline.markAsRemembered();
    }
    return timeline;
  }
}
