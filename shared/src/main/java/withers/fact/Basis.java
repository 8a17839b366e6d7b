package withers.fact;

/** On what ground an animal changed hands (common practice, no source). */
public enum Basis {
  BIRTH(false),
  INTAKE_STRAY(true),
  INTAKE_SURRENDER(false),
  INTAKE_SEIZURE(true),
  STRAY_HOLD_ENDED(false),
  TRANSFER(false),
  SALE(false),
  SALE_RETURNED(false),
  ADOPTION(false),
  ADOPTION_RETURNED(false),
  TRIAL_STARTED(true),
  TRIAL_FINALISED(false),
  FOSTER(true),
  BOARDING(true),
  RETURN_TO_OWNER(false),
  RETURN_TO_COLONY(false),
  IMPORT(false);

  private final boolean temporary;

  Basis(boolean temporary) {
    this.temporary = temporary;
  }

  /** Whether the receiver only holds the animal, beside a custodian who stays the same. */
  public boolean temporary() {
    return temporary;
  }
}
