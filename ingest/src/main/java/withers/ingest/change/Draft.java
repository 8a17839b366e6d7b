package withers.ingest.change;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import withers.codec.ByteReader;
import withers.codec.Bytes;
import withers.fact.Locator;

/**
 * A version, or a part of one, whose statements are being gathered from the log. They belong
 * together when one import read them at one place, or restated them, for one export date.
 *
 * @param importNumber tells the imports of a log from each other
 * @param day export date, as a day of the epoch
 */
record Draft(int importNumber, Locator locator, int day, Version version) {

  boolean belongsTo(Draft other) {
    return importNumber == other.importNumber && day == other.day && locator.equals(other.locator);
  }

  Draft with(Draft part) {
    VersionBuilder both = new VersionBuilder(Optional.empty());
    both.add(version);
    both.add(part.version);
    return new Draft(importNumber, locator, day, both.build());
  }

  static byte[] write(List<Draft> drafts) {
    Bytes out = new Bytes();
    out.unsigned(drafts.size());
    drafts.forEach(draft -> draft.write(out));
    return out.toArray();
  }

  private void write(Bytes out) {
    out.unsigned(importNumber);
    out.unsigned(locator.file());
    out.unsigned(locator.line());
    out.signed(day);
    VersionForm.write(version, out);
  }

  /** What was written, as a list that can be changed. */
  static List<Draft> read(byte[] bytes) {
    ByteReader in = new ByteReader(bytes);
    List<Draft> drafts = new ArrayList<>();
    for (int left = in.length("drafts"); left > 0; left--) {
      int importNumber = (int) in.unsigned();
      Locator locator = new Locator((int) in.unsigned(), in.unsigned());
      drafts.add(new Draft(importNumber, locator, (int) in.signed(), VersionForm.read(in)));
    }
    return drafts;
  }
}
