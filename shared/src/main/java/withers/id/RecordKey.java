package withers.id;

/** A source's own key for one of its records: not blank, at most 200 characters, trimmed. */
public record RecordKey(String value) implements Comparable<RecordKey> {
  private static final int LONGEST = 200;

  public RecordKey {
    value = value.strip();
    if (value.isEmpty() || value.length() > LONGEST) {
      throw new IllegalArgumentException(
          "Expected a record key of 1 to %d characters, but found %d"
              .formatted(LONGEST, value.length()));
    }
  }

  @Override
  public int compareTo(RecordKey other) {
    return value.compareTo(other.value);
  }

  @Override
  public String toString() {
    return value;
  }
}
