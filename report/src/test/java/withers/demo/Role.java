package withers.demo;

/** The part that a person plays in a row. */
enum Role {
  /** The client, buyer, adopter, holder or primary contact. */
  PERSON,
  /** Who brought the animal in. */
  FROM,
  /** The second contact of a registration. */
  SECONDARY
}
