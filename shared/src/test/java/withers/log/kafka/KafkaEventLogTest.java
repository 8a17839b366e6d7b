package withers.log.kafka;

import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;
import withers.kafka.Broker;
import withers.log.DurableEventLogContract;
import withers.log.EventLog;

@Timeout(value = 2, unit = TimeUnit.MINUTES)
@Tag("kafka")
class KafkaEventLogTest extends DurableEventLogContract {

  @RegisterExtension static final Broker BROKER = new Broker();

  private final String prefix = BROKER.newPrefix();

  @Override
  protected EventLog open() {
    return KafkaEventLog.open(BROKER.cluster(prefix));
  }

  @AfterEach
  void drop() {
    BROKER.drop(prefix);
  }
}
