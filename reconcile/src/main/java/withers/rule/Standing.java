package withers.rule;

/** How a registration's primary contact stands to the animal's keeper. */
public enum Standing {
  /** The keeper, or of the household, or an organisation that stays primary by agreement. */
  ACCEPTABLE,
  /** Somebody who may be the keeper or somebody else: nobody can tell. Acceptable, too. */
  UNTOLD,
  /** Somebody from before the keeper. */
  FROM_BEFORE,
  /** A stranger, registered after the keeper's start. */
  LATER,
  /** The record names nobody. */
  NOBODY;

  /** Whether such a primary contact may stay. */
  public boolean isAcceptable() {
    return this == ACCEPTABLE || this == UNTOLD;
  }
}
