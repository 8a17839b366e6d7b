package withers.id;

/**
 * An organisation's id in this workspace: lower-case letters, digits and dashes, 1 to 40
 * characters.
 */
public record OrganisationId(String value) implements Comparable<OrganisationId> {
  public OrganisationId {
    value = Slugs.checked("an organisation id", value);
  }

  @Override
  public int compareTo(OrganisationId other) {
    return value.compareTo(other.value);
  }

  @Override
  public String toString() {
    return value;
  }
}
