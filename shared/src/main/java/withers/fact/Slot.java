package withers.fact;

/**
 * The place in a record that a statement fills. One row may state several facts, each in its own
 * slot; together with source and record key the slot is the identity of a fact.
 */
public enum Slot {
  ANIMAL(Nature.CORRECTS),
  LINK(Nature.CORRECTS),
  PAIRING(Nature.CORRECTS),
  SUPPLY(Nature.CORRECTS),
  IMPLANT(Nature.CORRECTS),
  VISIT(Nature.OBSERVES),
  SCAN(Nature.OBSERVES),
  INTAKE(Nature.CORRECTS),
  OUTCOME(Nature.CORRECTS),
  MOVEMENT(Nature.CORRECTS),
  SALE(Nature.CORRECTS),
  SALE_RETURN(Nature.CORRECTS),
  REGISTRATION(Nature.OBSERVES),
  REGISTRATION_END(Nature.CORRECTS),
  LOOK_UP(Nature.OBSERVES),
  REPORT(Nature.CORRECTS),
  REUNION(Nature.CORRECTS),
  DEATH(Nature.CORRECTS),
  LISTING(Nature.OBSERVES);

  /** What a later statement in the same slot does to an earlier one. */
  public enum Nature {
    /** It replaces it: a typed date was put right. */
    CORRECTS,
    /** Both stand, each with its date: who attended, what the registry said in March. */
    OBSERVES
  }

  private final Nature nature;

  Slot(Nature nature) {
    this.nature = nature;
  }

  public Nature nature() {
    return nature;
  }
}
