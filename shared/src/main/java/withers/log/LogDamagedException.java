package withers.log;

/** Stored bytes are not what was written, or of a version that this program does not know. */
public final class LogDamagedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public LogDamagedException(String message) {
    super(message);
  }

  public LogDamagedException(String message, Throwable cause) {
    super(message, cause);
  }
}
