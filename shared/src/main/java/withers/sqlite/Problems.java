package withers.sqlite;

import java.nio.file.Path;
import java.sql.SQLException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Words for what can go wrong with a file, each with what to do. */
record Problems(Path path, SqliteFormat format) {

  // SQLite's primary result codes (its documentation, "Result and Error Codes")
  private static final int PRIMARY_CODE = 0xff;
  private static final int NO_PERMISSION = 3;
  private static final int BUSY = 5;
  private static final int LOCKED = 6;
  private static final int READ_ONLY = 8;
  private static final int CORRUPT = 11;
  private static final int DISK_FULL = 13;
  private static final int CANNOT_OPEN = 14;
  private static final int FORBIDDEN = 23;
  private static final int NOT_A_DATABASE = 26;

  RuntimeException explained(SQLException e) {
    SQLiteErrorCode code =
        e instanceof SQLiteException sqlite
            ? sqlite.getResultCode()
            : SQLiteErrorCode.UNKNOWN_ERROR;
    return switch (code.code & PRIMARY_CODE) {
      case BUSY, LOCKED -> unavailable("The %s is in use by another program; repeat later: %s", e);
      case CORRUPT -> damaged(e);
      case NOT_A_DATABASE -> unavailable("Expected the %s, but found another kind of file: %s", e);
      case NO_PERMISSION, READ_ONLY, CANNOT_OPEN, FORBIDDEN ->
          unavailable("The %s can't be opened for writing; see who may write it: %s", e);
      case DISK_FULL -> unavailable("No room is left on the disk for the %s: %s", e);
      default -> unavailable("The %s can't be read or written (" + code + "): %s", e);
    };
  }

  private RuntimeException damaged(SQLException cause) {
    String message = "The %s is damaged; restore a backup: %s".formatted(format.what(), path);
    RuntimeException damaged = format.damaged().apply(message);
    damaged.initCause(cause);
    return damaged;
  }

  RuntimeException unavailable(String message, Exception cause) {
    RuntimeException unavailable = unavailable(message);
    unavailable.initCause(cause);
    return unavailable;
  }

  RuntimeException unavailable(String message) {
    return format.unavailable().apply(message.formatted(format.what(), path));
  }
}
