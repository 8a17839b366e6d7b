package withers.id;

/** A source's name in this workspace: lower-case letters, digits and dashes, 1 to 40 characters. */
public record SourceId(String value) implements Comparable<SourceId> {
  public SourceId {
    value = Slugs.checked("a source id", value);
  }

  @Override
  public int compareTo(SourceId other) {
    return value.compareTo(other.value);
  }

  @Override
  public String toString() {
    return value;
  }
}
