package withers.log.sqlite;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import withers.log.DurableEventLogContract;
import withers.log.EventLog;
import withers.sqlite.Upgrading;
import withers.workspace.OwnerOnly;

class SqliteEventLogTest extends DurableEventLogContract {

  @TempDir private Path folder;

  @Override
  protected EventLog open() {
    return SqliteEventLog.open(
        folder.resolve("events.db"),
        Upgrading.REFUSED,
        ChipFilters.in(folder.resolve("filters"), OwnerOnly::openAnew, 1));
  }
}
