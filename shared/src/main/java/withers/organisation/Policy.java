package withers.organisation;

/**
 * What an organisation has agreed with the network about the registrations of animals that passed
 * through it.
 */
public enum Policy {
  /** It stays as a secondary contact for the animal's life. */
  STAYS_SECONDARY,
  /** It stays as the primary contact for the animal's life, by contract with the new keeper. */
  STAYS_PRIMARY
}
