package withers.rule;

/** How a registration's primary contact stands to the animal's keeper. */
public enum Standing {
  /** The keeper, or somebody who may be, or an organisation that stays primary by agreement. */
  ACCEPTABLE,
  /** Somebody from before the keeper. */
  FROM_BEFORE,
  /** A stranger, registered after the keeper's start. */
  LATER,
  /** The record names nobody. */
  NOBODY
}
