package withers.report.send;

/**
 * No mail can be handed over. Nothing was given. Its message names the server and shows no secret.
 */
public final class NoConnectionException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final boolean mayPass;

  /**
   * With the reason.
   *
   * @param mayPass whether waiting may help
   */
  public NoConnectionException(String message, boolean mayPass, Throwable cause) {
    super(message, cause);
    this.mayPass = mayPass;
  }

  /** Whether waiting may help: not where a password or a certificate is wrong. */
  public boolean mayPass() {
    return mayPass;
  }
}
