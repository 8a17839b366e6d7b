package withers.ingest.sniff;

/**
 * What something may be.
 *
 * @param confidence in percent, 0 to 100; 100 is certain
 * @param evidence what speaks for it, in words, without anything that is in a cell
 */
public record Guess<T>(T value, int confidence, String evidence) {

  public Guess {
    if (confidence < 0 || confidence > 100) {
      throw new IllegalArgumentException(
          "Expected a confidence from 0 to 100, but found " + confidence);
    }
  }
}
