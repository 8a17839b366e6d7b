package withers.ingest.change;

import withers.codec.ByteReader;
import withers.codec.Bytes;

/** A timeline as bytes. The form lives no longer than a cache: it has no versions. */
final class TimelineForm {

  private TimelineForm() {}

  static byte[] write(Timeline timeline) {
    Bytes bytes = new Bytes();
    write(timeline, bytes);
    return bytes.toArray();
  }

  static void write(Timeline timeline, Bytes out) {
    out.unsigned(timeline.told().size());
    for (Told told : timeline.told()) {
      out.signed(told.day());
      VersionForm.write(told.version(), out);
    }
  }

  /** What was written, taken for remembered. */
  static Timeline read(byte[] bytes) {
    Timeline timeline = read(new ByteReader(bytes));
    timeline.markAsRemembered();
    return timeline;
  }

  static Timeline read(ByteReader in) {
    Timeline timeline = new Timeline();
    for (int points = in.length("points"); points > 0; points--) {
      timeline.add((int) in.signed(), VersionForm.read(in));
    }
    return timeline;
  }
}
