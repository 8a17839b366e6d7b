package withers.ingest.inspect;

/** To what use a field puts a column: columns of one use look alike. */
enum Use {
  KEY,
  ANIMAL_ID,
  CHIP,
  ANIMAL_NAME,
  ACCOUNT,
  WORD,
  DAY,
  EXPORT_DATE,
  PARTY_ID("id"),
  FULL_NAME("name"),
  GIVEN_NAME("given-name"),
  FAMILY_NAME("family-name"),
  PHONE("phones"),
  EMAIL("emails"),
  ADDRESS("address"),
  POSTCODE("postcode"),
  TOWN("town"),
  REGION("region"),
  COUNTRY("country"),
  ORGANISATION("organisation");

  private final String word;

  Use(String word) {
    this.word = word;
  }

  Use() {
    this("");
  }

  /** As profiles write it in a group of columns about somebody; empty for other columns. */
  String word() {
    return word;
  }

  boolean isAboutSomebody() {
    return !word.isEmpty();
  }

  /** Whether it names somebody. */
  boolean isName() {
    return this == FULL_NAME || this == GIVEN_NAME || this == FAMILY_NAME || this == ORGANISATION;
  }

  /** Whether mistaking it would put a person's details in the wrong place. */
  boolean isContact() {
    return isAboutSomebody() && this != PARTY_ID;
  }
}
