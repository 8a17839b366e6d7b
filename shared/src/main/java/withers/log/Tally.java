package withers.log;

/**
 * What became of an import's rows. It adds up: {@code read = applied + unchanged + rejected}.
 *
 * @param read rows read from the files
 * @param applied rows that said something new
 * @param unchanged rows that said what the source had said before
 * @param rejected rows that went to quarantine
 * @param disappeared records that this export no longer lists, withheld ones included
 * @param events events appended
 */
public record Tally(
    long read, long applied, long unchanged, long rejected, long disappeared, long events) {
  public static final Tally NOTHING = new Tally(0, 0, 0, 0, 0, 0);

  public Tally {
    if (read != applied + unchanged + rejected) {
      throw new IllegalArgumentException(
          "Expected rows to add up, but found %d read, %d applied, %d unchanged, %d rejected"
              .formatted(read, applied, unchanged, rejected));
    }
  }
}
