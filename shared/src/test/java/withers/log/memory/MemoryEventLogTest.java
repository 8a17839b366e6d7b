package withers.log.memory;

import withers.log.EventLog;
import withers.log.EventLogContract;

class MemoryEventLogTest extends EventLogContract {

  @Override
  protected EventLog open() {
    return new MemoryEventLog();
  }
}
