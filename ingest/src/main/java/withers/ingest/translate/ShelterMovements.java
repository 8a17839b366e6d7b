package withers.ingest.translate;

import java.time.LocalDate;
import java.util.Optional;
import withers.fact.Fact;
import withers.fact.Party;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.Movement;
import withers.ingest.profile.PartyName;

/** A shelter's stay, from intake to outcome, or a single movement. */
final class ShelterMovements {

  private record Step(ColumnName day, ColumnName type, Slot slot, PartyName other) {}

  private static final Step INTAKE =
      new Step(ColumnName.INTAKE, ColumnName.INTAKE_TYPE, Slot.INTAKE, PartyName.INTAKE_FROM);
  private static final Step OUTCOME =
      new Step(ColumnName.OUTCOME, ColumnName.OUTCOME_TYPE, Slot.OUTCOME, PartyName.OUTCOME_TO);
  private static final Step MOVEMENT =
      new Step(ColumnName.MOVED, ColumnName.MOVEMENT_TYPE, Slot.MOVEMENT, PartyName.MOVEMENT_WITH);

  private ShelterMovements() {}

  static void translate(RowInHand row, Subject animal) {
    step(row, animal, INTAKE);
    step(row, animal, OUTCOME);
    step(row, animal, MOVEMENT);
  }

  private static void step(RowInHand row, Subject animal, Step step) {
    Optional<LocalDate> day = row.day(step.day);
    if (day.isPresent()) {
      Optional<Movement> movement = row.word(step.type, Movement.class);
      movement.ifPresent(what -> state(row, animal, step, day, what));
      if (movement.isEmpty()) {
        row.reject(
            Reject.Code.WORD_MISSING,
            step.type,
            "Expected what happened on the day, but found nothing");
      }
    } else if (!row.text(step.type).isEmpty()) {
      row.reject(
          Reject.Code.DAY_MISSING,
          step.day,
          "Expected the day on which it happened, but found none");
    }
  }

  private static void state(
      RowInHand row, Subject animal, Step step, Optional<LocalDate> day, Movement what) {
    if (what == Movement.DIED) {
      Animals.died(row, animal, day);
    }
    what.handover()
        .ifPresent(h -> row.state(animal, step.slot, day, handedOver(h, row.party(step.other))));
  }

  private static Fact handedOver(Movement.Handover handover, Party other) {
    Party own = new Party.Own();
    return switch (handover.direction()) {
      case IN -> new Fact.HandedOver(other, own, handover.basis());
      case OUT -> new Fact.HandedOver(own, other, handover.basis());
      case HERE -> new Fact.HandedOver(new Party.Unstated(), own, handover.basis());
    };
  }
}
