package withers.report.backup;

/** A backup can't be taken or brought back as wished; the message says why, and what to do. */
public final class BackupRefusedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  BackupRefusedException(String message) {
    super(message);
  }

  BackupRefusedException(String message, Exception cause) {
    super(message, cause);
  }
}
