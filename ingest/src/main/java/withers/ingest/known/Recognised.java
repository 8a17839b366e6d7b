package withers.ingest.known;

import java.io.IOException;
import java.io.InputStream;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import withers.id.RecordKey;
import withers.ingest.change.ChangeDetector;
import withers.ingest.change.Remembered;
import withers.ingest.file.ExportFile;

/**
 * An export of which every record is either recognised as one that its source's last full export
 * held, byte for byte, or has to be read. Files are numbered as they were given, from 0. Close it,
 * with all that was made {@linkplain #without without} some records, once it is kept or given up.
 */
public final class Recognised implements AutoCloseable {

  private final KnownExport known;
  private final List<ExportFile> files;
  private final List<Recognition> recognitions;
  private final BitSet barred;
  private final BitSet places = new BitSet();
  private Optional<BitSet> records = Optional.empty();
  private final BitSet unrecognised; // numbers of listed records
  private final BitSet read = new BitSet(); // numbers of records of which rows are read

  /**
   * @param barred places of the last export that nothing is recognised by
   */
  Recognised(
      KnownExport known, List<ExportFile> files, List<Recognition> recognitions, BitSet barred) {
    this.known = known;
    this.barred = barred;
    this.files = List.copyOf(files);
    this.recognitions = List.copyOf(recognitions);
    recognitions.forEach(one -> one.mark(places));
    recover();
    this.unrecognised = unrecognisedRecords();
  }

  /** Records that stand elsewhere are looked for where the files have passed records over. */
  private void recover() {
    BitSet left = passedOver();
    left.andNot(barred);
    if (left.isEmpty() || recognitions.stream().allMatch(one -> one.unrecognised() == 0)) {
      return;
    }
    OrderIndex.Some some = new OrderIndex.Some(known.order(), left);
    for (Recognition one : recognitions) {
      one.recover(some);
      one.mark(places);
    }
  }

  private BitSet passedOver() {
    BitSet passedOver = new BitSet();
    passedOver.set(0, known.order().size());
    passedOver.andNot(places);
    return passedOver;
  }

  /** What the source has said so far. */
  public Remembered remembered() {
    return known;
  }

  @Override
  public void close() {
    known.close();
  }

  /** How many rows of a file were recognised. */
  public long rows(int file) {
    return recognitions.get(file).count();
  }

  /** How many rows were recognised. */
  public long rows() {
    return recognitions.stream().mapToLong(Recognition::count).sum();
  }

  /** How many of those did not stand where they were expected. */
  public long lookedUp() {
    return recognitions.stream().mapToLong(Recognition::lookedUp).sum();
  }

  /** The start of a file and those of its records that have to be read. The caller closes it. */
  public InputStream unread(int file) throws IOException {
    return new UnreadStream(files.get(file).open(), recognitions.get(file), known.stamp().start());
  }

  /** Where the rows of {@link #unread(int)} stand in the file. */
  public UnreadPlaces places(int file) {
    return new UnreadPlaces(recognitions.get(file), known.stamp().start().line());
  }

  /** What is to be noted of a row's key, by the two methods that follow. */
  public KeyMark mark(RecordKey key) {
    return known.mark(key);
  }

  /** Notes that a record of a file was read, has this key, and that its row was taken whole. */
  public void isOf(int file, int record, KeyMark key) {
    recognitions.get(file).key(record, key.hash());
  }

  /** Whether no record was found elsewhere than where it was expected, once all were compared. */
  public boolean isAsFound() {
    return recognitions.stream().noneMatch(Recognition::hasRecovered);
  }

  /** Whether what {@link #unread(int)} ends with is the end of the file. */
  public boolean endsUnread(int file) {
    return recognitions.get(file).endsUnrecognised();
  }

  /** Notes that a row with this key is read; says whether a record of it was recognised, too. */
  public boolean isRecognisedToo(KeyMark key) {
    OptionalInt number = key.number();
    number.ifPresent(read::set);
    return number.isPresent()
        && !unrecognised.get(number.getAsInt())
        && records().get(number.getAsInt());
  }

  private Optional<Integer> number(RecordKey key) {
    return known.find(key).map(TimelineFiles.Entry::number);
  }

  /**
   * The same export, with no record of these keys recognised.
   *
   * @param keys known ones
   */
  public Recognised without(Collection<RecordKey> keys) {
    Set<Integer> numbers = new HashSet<>();
    keys.forEach(key -> number(key).ifPresent(numbers::add));
    BitSet more = placesOf(numbers);
    more.or(barred);
    return KnownExports.recognise(known, files, more, Strangers.IGNORED);
  }

  private BitSet placesOf(Set<Integer> numbers) {
    BitSet found = new BitSet();
    Order.Cursor order = known.order().cursor();
    for (int place = 0; place < known.order().size(); place++) {
      if (numbers.contains(order.number(place))) {
        found.set(place);
      }
    }
    return found;
  }

  /** The numbers of the records that were recognised. */
  private BitSet records() {
    if (records.isEmpty()) {
      BitSet numbers = new BitSet(known.timelines().bound());
      Order.Cursor order = known.order().cursor();
      places.stream().forEach(place -> numbers.set(order.number(place)));
      records = Optional.of(numbers);
    }
    return records.get();
  }

  /** The listed records that were not recognised, and of which no row is read either. */
  public Collection<RecordKey> expected() {
    BitSet missing = new BitSet();
    missing.or(unrecognised);
    missing.andNot(read);
    return missing.stream().mapToObj(known::key).toList();
  }

  private BitSet unrecognisedRecords() {
    BitSet numbers = new BitSet(known.timelines().bound());
    known.stamp().unordered().forEach(numbers::set);
    Order.Cursor order = known.order().cursor();
    passedOver().stream()
        .map(order::number)
        .filter(number -> !isElsewhereToo(number))
        .forEach(numbers::set);
    return numbers;
  }

  /** Whether a record of which one place was passed over was recognised in another. */
  private boolean isElsewhereToo(int number) {
    return known.stamp().isRepeated() && records().get(number);
  }

  /**
   * Prepares this export to be kept instead of the last one.
   *
   * @param detector after its conclusion
   */
  public Preparation prepare(ChangeDetector detector) throws IOException {
    try (Renewal renewal = new Renewal(known)) {
      detector.remember(renewal);
      return renewal.prepare(recognitions, detector.listings());
    }
  }
}
