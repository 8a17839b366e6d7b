package withers.ingest.known;

import java.io.IOException;
import java.util.BitSet;

/** Compares the records of one file with the order of the last export. */
final class Recogniser {

  /** How far ahead a record is looked for when it is not the expected one. */
  private static final int AHEAD = 16;

  /** After so many records in a row that were nowhere near, the whole order is searched. */
  private static final int PATIENCE = 256;

  private final Order.Cursor order;
  private final int size;
  private final OrderIndex index;
  private final BitSet barred;
  private final RecordHash hash;
  private final Strangers early;
  private final Recognition recognition = new Recognition();
  private int expected;
  private int runStart;
  private int strangers; // in a row
  private int lookedUp;

  /**
   * @param barred places that nothing is recognised by
   * @param expected the place of the file's first record in the last export
   * @param early is told at once of records that are not recognised
   */
  Recogniser(
      Order order,
      OrderIndex index,
      BitSet barred,
      RecordHash hash,
      int expected,
      Strangers early) {
    this.order = order.cursor();
    this.size = order.size();
    this.index = index;
    this.barred = barred;
    this.hash = hash;
    this.expected = expected;
    this.runStart = expected;
    this.early = early;
  }

  Recognition compare(RecordScanner records) throws IOException {
    boolean known = true;
    while (records.next()) {
      hash.hash(records.bytes(), records.from(), records.to());
      known = isAt(expected) || jumps();
      if (known) {
        expected++;
        strangers = 0;
      } else {
        endRun();
        recognition.unrecognised(records, hash);
        early.record(
            records.bytes(), records.from(), records.length(), records.line(), records.height());
        strangers++;
      }
    }
    endRun();
    recognition.end(!known, lookedUp);
    return recognition;
  }

  private boolean isAt(int place) {
    return place < size && order.is(place, hash.first(), hash.second()) && !barred.get(place);
  }

  /** Goes to another place where the record stands, if there is one. */
  private boolean jumps() {
    for (int place = expected + 1; place <= expected + AHEAD; place++) {
      if (isAt(place)) {
        jump(place);
        return true;
      }
    }
    int place = strangers < PATIENCE ? -1 : index.find(order, hash.first(), hash.second());
    if (place >= 0 && isAt(place)) {
      jump(place);
      return true;
    }
    return false;
  }

  private void jump(int place) {
    endRun();
    lookedUp++;
    expected = place;
    runStart = place;
  }

  private void endRun() {
    recognition.run(runStart, expected - runStart);
    runStart = expected;
  }
}
