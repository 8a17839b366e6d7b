package withers.ingest.translate;

import java.time.LocalDate;
import java.util.Optional;
import withers.fact.Fact;
import withers.fact.Slot;
import withers.fact.Species;
import withers.fact.Subject;
import withers.ingest.profile.ColumnName;

/** What every row about an animal states: which animal, and what it is. */
final class Animals {

  private Animals() {}

  /** Which animal the row is about; empty, and the row rejected, when it doesn't tell. */
  static Optional<Subject> subject(RowInHand row) {
    Optional<Subject> subject =
        row.number(ColumnName.CHIP)
            .or(() -> row.number(ColumnName.SECOND_CHIP))
            .or(() -> row.animalId().map(Subject.Animal::new));
    if (subject.isEmpty()) {
      row.reject(
          Reject.Code.NO_NUMBER,
          ColumnName.CHIP,
          "Expected a chip number, or an animal's id where the profile names one, but found neither");
    }
    return subject;
  }

  /** Description, ties to other chips and to the source's own id, death. */
  static void state(RowInHand row, Subject subject) {
    row.state(subject, Slot.ANIMAL, Optional.empty(), described(row));
    if (!(subject instanceof Subject.Animal)) {
      row.animalId()
          .ifPresent(id -> row.state(subject, Slot.LINK, Optional.empty(), new Fact.Linked(id)));
    }
    row.number(ColumnName.SECOND_CHIP)
        .filter(second -> !second.equals(subject))
        .ifPresent(second -> pair(row, subject, second));
    row.day(ColumnName.DIED).ifPresent(day -> died(row, subject, Optional.of(day)));
  }

  private static Fact described(RowInHand row) {
    return new Fact.Described(
        row.word(ColumnName.SPECIES, Species.class).orElse(Species.UNSTATED),
        row.optionalText(ColumnName.NAME),
        row.freeWord(ColumnName.SEX),
        row.day(ColumnName.BORN));
  }

  /**
   * Says of either number that the animal carries the other, as far as the other can be read. A
   * damaged one also has the description, so that it is told of even when neither can be.
   */
  private static void pair(RowInHand row, Subject subject, Subject second) {
    if (second instanceof Subject.Damaged) {
      row.state(second, Slot.ANIMAL, Optional.empty(), described(row));
    }
    carriesToo(row, subject, second);
    carriesToo(row, second, subject);
  }

  private static void carriesToo(RowInHand row, Subject one, Subject other) {
    other
        .chip()
        .ifPresent(
            number -> row.state(one, Slot.PAIRING, Optional.empty(), new Fact.PairedWith(number)));
  }

  static void died(RowInHand row, Subject subject, Optional<LocalDate> day) {
    if (!row.hasStated(Slot.DEATH)) {
      row.state(subject, Slot.DEATH, day, new Fact.Died());
    }
  }
}
