package withers.log.sqlite;

import java.util.List;
import withers.log.LogDamagedException;
import withers.log.LogUnavailableException;
import withers.sqlite.SqliteFormat;

/** What the log's file holds. */
final class LogSchema {

  /** "WTHL" in the file's header. */
  private static final int APPLICATION_ID = 0x5754484c;

  static final SqliteFormat FORMAT =
      new SqliteFormat(
          "event log",
          APPLICATION_ID,
          List.of("page_size=16384"),
          List.of(
              List.of(
                  """
              CREATE TABLE stream(
                name TEXT PRIMARY KEY,
                partitions INTEGER NOT NULL
              ) STRICT, WITHOUT ROWID""",
                  // body comes last: the columns before it are read without its overflow pages
                  """
              CREATE TABLE chunk(
                stream TEXT NOT NULL,
                partition INTEGER NOT NULL,
                import BLOB NOT NULL,
                sequence INTEGER NOT NULL,
                piece INTEGER NOT NULL,
                events INTEGER NOT NULL,
                length INTEGER NOT NULL,
                checksum INTEGER NOT NULL,
                body BLOB NOT NULL,
                PRIMARY KEY(stream, partition, import, sequence, piece)
              ) STRICT, WITHOUT ROWID""",
                  // a first marker's parent is the empty BLOB: NULLs would all be different
                  """
              CREATE TABLE marker(
                position INTEGER PRIMARY KEY,
                id BLOB NOT NULL UNIQUE,
                chain TEXT NOT NULL,
                parent BLOB NOT NULL,
                contents TEXT NOT NULL,
                body TEXT NOT NULL,
                checksum INTEGER NOT NULL,
                UNIQUE(chain, parent)
              ) STRICT""",
                  "CREATE TABLE head(one INTEGER PRIMARY KEY CHECK(one = 1), markers INTEGER) STRICT",
                  "INSERT INTO head VALUES(1, 0)")),
          LogUnavailableException::new,
          LogDamagedException::new);

  private LogSchema() {}
}
