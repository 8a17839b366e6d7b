package withers.settling;

/**
 * A follow-up can't be settled so. The message says why, and what can be done; nothing personal.
 */
public final class CannotBeSettledException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  CannotBeSettledException(String message) {
    super(message);
  }
}
