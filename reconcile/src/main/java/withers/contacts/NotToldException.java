package withers.contacts;

/** Something was asked about contacts that was not told: whoever has the vault has to judge. */
public final class NotToldException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  NotToldException() {
    super("Asked about contacts of whom nothing was told", null, false, false);
  }
}
