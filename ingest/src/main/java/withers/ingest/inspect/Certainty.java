package withers.ingest.inspect;

/**
 * How sure a proposal is.
 *
 * @param bits by how much it fits better than the next best, from 0
 */
public record Certainty(double bits) {

  private static final double MOST = 0.99;

  public Certainty {
    bits = Math.max(0, bits);
  }

  /** As a probability by the log-odds, 50 to 99 percent: nothing here is ever certain. */
  public int percent() {
    double odds = Math.pow(2, bits);
    return (int) Math.round(100 * Math.min(MOST, odds / (1 + odds)));
  }
}
