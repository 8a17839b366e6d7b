package withers.ingest.known;

/**
 * Recognising records does not work out, for whatever reason: every row has to be read instead. Not
 * an error: what it says is for tests and tracing.
 */
public final class UnrecognisableException extends RuntimeException {

  public UnrecognisableException(String why) {
    super("Expected records that can be recognised, but found " + why);
  }
}
