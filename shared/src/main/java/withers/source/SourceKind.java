package withers.source;

/** What kind of records a source sends. */
public enum SourceKind {
  CLINIC_PATIENTS,
  SHELTER_MOVEMENTS,
  SELLER_SALES,
  CHIP_SUPPLY,
  REGISTRY_CONTACTS,
  LOST_AND_FOUND
}
