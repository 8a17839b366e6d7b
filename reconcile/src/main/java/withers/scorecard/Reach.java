package withers.scorecard;

/**
 * What records tell about reaching a patient's keeper by its number. The first that applies, in the
 * order of docs/scorecard.md.
 */
public enum Reach {
  /** A registered phone or e-mail agrees with one that was confirmed lately. */
  REACHABLE(Part.REACHABLE),
  /** No number of the animal is registered, and registries' silence tells it. */
  NOT_REGISTERED(Part.NOT_REACHABLE),
  /** No registration names a person with a phone or e-mail. */
  NO_DETAILS(Part.NOT_REACHABLE),
  /** No clinic confirmed a contact of the keeper lately. */
  NOT_CONFIRMED(Part.NOT_REACHABLE),
  /** Other phones and e-mail addresses are registered than those that were confirmed. */
  OTHER_DETAILS(Part.NOT_REACHABLE),
  /** Whose patient it is can't be told. */
  HOME_NOT_KNOWN(Part.NOT_KNOWN),
  /** Records describe two animals under one number. */
  TWO_ANIMALS(Part.NOT_KNOWN),
  /** Who has the animal can't be told. */
  KEEPER_NOT_KNOWN(Part.NOT_KNOWN),
  /** Somebody's details were forgotten on request. */
  FORGOTTEN(Part.NOT_KNOWN),
  /** A registry's exports are too old, or don't reach far enough. */
  REGISTRY_NOT_KNOWN(Part.NOT_KNOWN),
  /** The animal's own clinic is none of the group. */
  REFERRAL(Part.APART),
  /** An organisation has the animal: it is registered at hand-over. */
  IN_CARE(Part.APART),
  /** No record of the group tells a number that can be read. */
  NO_NUMBER(Part.APART);

  /** Where a patient is counted. */
  public enum Part {
    /** In the numerator, and so in the denominator. */
    REACHABLE,
    /** In the denominator only. */
    NOT_REACHABLE,
    /** Outside the ratio, and limited. */
    NOT_KNOWN,
    /** Outside both: another denominator's. */
    APART
  }

  private final Part part;

  Reach(Part part) {
    this.part = part;
  }

  public Part part() {
    return part;
  }
}
