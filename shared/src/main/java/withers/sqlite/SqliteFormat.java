package withers.sqlite;

import java.util.List;
import java.util.function.Function;

/**
 * A kind of file: how to tell that a file is of this kind, and what a new one holds.
 *
 * @param what what people call it: "event log"
 * @param applicationId the mark in the file's header that says so
 * @param pragmas settings of every writing connection, beyond write-ahead logging and full syncing
 * @param schema a list of statements for each version, from 1: what makes it of the one before, the
 *     first of an empty file
 * @param unavailable the exception that says that the file can't be used now, or by this program
 * @param damaged the exception that says that the file is not what was written
 */
public record SqliteFormat(
    String what,
    int applicationId,
    List<String> pragmas,
    List<List<String>> schema,
    Function<String, RuntimeException> unavailable,
    Function<String, RuntimeException> damaged) {

  public SqliteFormat {
    pragmas = List.copyOf(pragmas);
    schema = schema.stream().map(List::copyOf).toList();
  }

  /** The newest version that this program knows, from 1. */
  int version() {
    return schema.size();
  }
}
