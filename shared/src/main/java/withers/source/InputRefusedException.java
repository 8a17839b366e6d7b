package withers.source;

/**
 * An export can't be taken: its layout is unknown, a file is broken, or too many rows are bad.
 * Nothing was changed. Its message names the file and, where known, line and column, and shows no
 * details of people.
 */
public class InputRefusedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public InputRefusedException(String message) {
    super(message);
  }

  public InputRefusedException(String message, Throwable cause) {
    super(message, cause);
  }
}
