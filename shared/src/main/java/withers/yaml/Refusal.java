package withers.yaml;

/** A value is refused by a reader, with advice that goes behind the place in the message. */
public final class Refusal extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;
  private final String advice;

  /**
   * @param message what was expected and what was found
   * @param advice what to do, or empty
   */
  public Refusal(String message, String advice) {
    super(message);
    this.advice = advice;
  }

  public String advice() {
    return advice;
  }
}
