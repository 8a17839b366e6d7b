package withers.log;

/** The log can't be opened, read or written now, or by this program; it may well be whole. */
public final class LogUnavailableException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public LogUnavailableException(String message) {
    super(message);
  }
}
