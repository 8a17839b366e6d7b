package withers.ingest.profile;

import withers.yaml.Choices;

/** The people and organisations whose columns a profile can name. */
public enum PartyName {
  CLIENT,
  IMPLANTER,
  INTAKE_FROM,
  OUTCOME_TO,
  MOVEMENT_WITH,
  BUYER,
  PURCHASER,
  PRIMARY,
  SECONDARY,
  EMERGENCY,
  ORGANISATION,
  REPORTER,
  HOLDER;

  /** As profiles write it: {@code outcome-to}. */
  public String word() {
    return Choices.name(this);
  }
}
