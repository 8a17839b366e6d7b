package withers.organisation;

/** What an organisation does in the network. */
public enum OrganisationKind {
  CLINIC,
  SHELTER,
  SELLER,
  REGISTRY,
  COORDINATOR,
  OTHER
}
