package withers.contact;

/** What the vault holds is not what was written. The message shows no details of anyone. */
public final class VaultDamagedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public VaultDamagedException(String message) {
    super(message);
  }
}
