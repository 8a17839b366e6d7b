package withers.yaml;

/** A value is refused, with advice that belongs behind the place in the message. */
final class Refusal extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;
  private final String advice;

  Refusal(String message, String advice) {
    super(message);
    this.advice = advice;
  }

  String advice() {
    return advice;
  }
}
