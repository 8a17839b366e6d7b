package withers.log.sqlite;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import withers.log.DurableEventLogContract;
import withers.log.EventLog;

class SqliteEventLogTest extends DurableEventLogContract {

  @TempDir private Path folder;

  @Override
  protected EventLog open() {
    return SqliteEventLog.open(folder.resolve("events.db"));
  }
}
