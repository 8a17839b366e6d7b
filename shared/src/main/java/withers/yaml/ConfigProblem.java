package withers.yaml;

/**
 * A mistake in a configuration file.
 *
 * @param place where it is
 * @param key the key that it is about, or empty when it is about none
 * @param message what is wrong: {@code Expected X, but found Y}
 * @param advice what to do about it, or empty
 */
public record ConfigProblem(Place place, String key, String message, String advice) {

  public String file() {
    return place.file();
  }

  /** Line in the file, from 1; 0 when the file as a whole is meant. */
  public int line() {
    return place.line();
  }

  /** Column in the line, from 1; 0 when the file as a whole is meant. */
  public int column() {
    return place.column();
  }

  /** The whole message: {@code Expected X, but found Y (file, line 3, column 1): advice}. */
  public String text() {
    return message + " (" + place + ")" + (advice.isEmpty() ? "" : ": " + advice);
  }
}
