package withers.ingest.profile;

import java.util.Optional;
import withers.fact.Basis;
import withers.yaml.Choices;

/** What a shelter's word for an intake, an outcome or a movement can mean. */
public enum Movement {
  BIRTH(Direction.HERE, Basis.BIRTH),
  INTAKE_STRAY(Direction.IN, Basis.INTAKE_STRAY),
  INTAKE_SURRENDER(Direction.IN, Basis.INTAKE_SURRENDER),
  INTAKE_SEIZURE(Direction.IN, Basis.INTAKE_SEIZURE),
  STRAY_HOLD_ENDED(Direction.HERE, Basis.STRAY_HOLD_ENDED),
  TRANSFER_IN(Direction.IN, Basis.TRANSFER),
  TRANSFER_OUT(Direction.OUT, Basis.TRANSFER),
  SALE(Direction.OUT, Basis.SALE),
  SALE_RETURNED(Direction.IN, Basis.SALE_RETURNED),
  ADOPTION(Direction.OUT, Basis.ADOPTION),
  ADOPTION_RETURNED(Direction.IN, Basis.ADOPTION_RETURNED),
  TRIAL_STARTED(Direction.OUT, Basis.TRIAL_STARTED),
  TRIAL_FINALISED(Direction.OUT, Basis.TRIAL_FINALISED),
  FOSTER(Direction.OUT, Basis.FOSTER),
  BOARDING(Direction.OUT, Basis.BOARDING),
  RETURN_TO_OWNER(Direction.OUT, Basis.RETURN_TO_OWNER),
  RETURN_TO_COLONY(Direction.OUT, Basis.RETURN_TO_COLONY),
  IMPORT(Direction.IN, Basis.IMPORT),
  /** The animal died. */
  DIED,
  /** Nothing that concerns custody, such as the end of a foster stay. */
  IGNORED;

  /** Between whom the animal moves. */
  public enum Direction {
    /** From the other party to the organisation. */
    IN,
    /** From the organisation to the other party. */
    OUT,
    /** To the organisation, from nobody. */
    HERE
  }

  /** A change of hands: on what ground, and which way. */
  public record Handover(Direction direction, Basis basis) {}

  private final Optional<Direction> direction;
  private final Optional<Basis> basis;

  Movement() {
    this.direction = Optional.empty();
    this.basis = Optional.empty();
  }

  Movement(Direction direction, Basis basis) {
    this.direction = Optional.of(direction);
    this.basis = Optional.of(basis);
  }

  /** The change of hands; empty for a death and for what is ignored. */
  public Optional<Handover> handover() {
    return direction.flatMap(way -> basis.map(ground -> new Handover(way, ground)));
  }

  /** As profiles write it: {@code intake-stray}. */
  public String word() {
    return Choices.name(this);
  }
}
