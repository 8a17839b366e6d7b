package withers.ingest.inspect;

/**
 * A column that can be a field.
 *
 * @param header bits that its header speaks for it
 * @param content bits that its cells speak for it
 */
record Candidate(int index, Field field, Column column, double header, double content) {

  double score() {
    return header + content;
  }

  /** Whether a profile would say the same of the column: a first phone or a second one. */
  boolean saysTheSameAs(Candidate other) {
    return column == other.column && field.path().equals(other.field.path());
  }
}
