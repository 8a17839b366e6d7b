package withers.report.schedule.postgres;

/** The database can't be used now. Its message names the server, and shows no secret. */
public final class StoreUnavailableException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  StoreUnavailableException(String message, Throwable cause) {
    super(message, cause);
  }
}
