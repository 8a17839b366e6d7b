package withers.fact;

/** The part that a contact plays in a registration. */
public enum ContactRole {
  PRIMARY,
  SECONDARY,
  EMERGENCY,
  ORGANISATION
}
