package withers.ingest.translate;

import java.util.Optional;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;
import withers.fact.Fact;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.PartyName;
import withers.ingest.profile.YesNo;

/** A delivery of chips: a range of numbers, or one, to a purchaser. */
final class ChipSupply {

  private ChipSupply() {}

  static void translate(RowInHand row) {
    Optional<ChipNumber> single = number(row, ColumnName.CHIP);
    Optional<ChipNumber> first = number(row, ColumnName.FIRST).or(() -> single);
    Optional<ChipNumber> last = number(row, ColumnName.LAST).or(() -> first);
    if (first.isEmpty() || last.isEmpty()) {
      reject(row, "Expected a number, or the first and last of a range, but found none");
    } else if (first.get().kind() != last.get().kind() || first.get().compareTo(last.get()) > 0) {
      reject(row, "Expected a range whose last number follows its first, but found another");
    } else {
      supplied(row, new NumberRange(first.get(), last.get()));
    }
  }

  /** A range holds thousands of chips: neither end may be guessed. */
  private static Optional<ChipNumber> number(RowInHand row, ColumnName column) {
    Optional<Subject> subject = row.number(column);
    if (subject.isPresent() && subject.get().chip().isEmpty()) {
      row.reject(
          Reject.Code.RANGE_REFUSED,
          column,
          "Expected a number that can be read without guessing, but found a damaged one");
    }
    return subject.flatMap(Subject::chip);
  }

  private static void reject(RowInHand row, String message) {
    row.reject(Reject.Code.RANGE_REFUSED, ColumnName.FIRST, message);
  }

  private static void supplied(RowInHand row, NumberRange range) {
    boolean prepaid =
        row.word(ColumnName.PREPAID, YesNo.class).filter(YesNo.YES::equals).isPresent();
    row.state(
        new Subject.Range(),
        Slot.SUPPLY,
        row.day(ColumnName.SUPPLIED),
        new Fact.Supplied(range, row.party(PartyName.PURCHASER), prepaid));
  }
}
