package withers.report.cli;

import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.extension.RegisterExtension;
import withers.kafka.Broker;

/** The same six months with the log on Kafka. */
@Tag("kafka")
@EnabledIfSystemProperty(
    named = "withers.kafka",
    matches = "true",
    disabledReason = "asked for by -Pkafka: it takes as long as all other tests of Kafka together")
@Timeout(value = 10, unit = TimeUnit.MINUTES)
class SixMonthsOnKafkaTest extends SixMonthsTest {

  @RegisterExtension static final Broker BROKER = new Broker();

  @Override
  String log() {
    return BROKER.setting(BROKER.newPrefix());
  }
}
