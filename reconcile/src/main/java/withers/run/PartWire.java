package withers.run;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.id.SourceId;
import withers.rule.Assessment;

/**
 * The result of a partition as bytes. What was put off or left is named by its number: whoever has
 * the vault has the log, too.
 */
record PartWire(
    long animals,
    List<Assessment> telling,
    List<ChipNumber> deferred,
    List<ChipNumber> cut,
    List<ChipNumber> left,
    Set<ChipNumber> zeros,
    List<Known> known,
    List<ChipNumber> stock,
    List<TakenBack> takenBack,
    Aside strays,
    Aside carried) {

  /** The form; another one has another number. */
  static final int FORM = 2;

  record Known(ChipNumber number, Optional<SourceId> onlyFrom) {}

  record TakenBack(ChipNumber number, LocalDate on) {}

  /** Numbers put aside, with people or with signs that were told of them. */
  record Aside(List<OfPerson> people, List<OfSign> told) {}

  record OfPerson(ChipNumber number, ContactRef person) {}

  record OfSign(ChipNumber number, long sign) {}

  static byte[] write(StandAlone part) {
    return new PartWriter().write(part);
  }

  /**
   * Reads what {@link #write} wrote.
   *
   * @throws withers.log.LogDamagedException when it is anything else
   */
  static PartWire read(byte[] bytes) {
    return new PartReader(bytes).read();
  }
}
