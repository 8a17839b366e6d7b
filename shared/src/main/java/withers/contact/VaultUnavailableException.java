package withers.contact;

/** The vault or its key can't be opened, read or written now, or by this program. */
public final class VaultUnavailableException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public VaultUnavailableException(String message) {
    super(message);
  }

  public VaultUnavailableException(String message, Throwable cause) {
    super(message, cause);
  }
}
