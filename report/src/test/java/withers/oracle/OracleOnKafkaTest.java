package withers.oracle;

import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.extension.RegisterExtension;
import withers.kafka.Broker;

/** The same worlds with the log on Kafka. */
@Tag("kafka")
@EnabledIfSystemProperty(
    named = "withers.kafka",
    matches = "true",
    disabledReason = "asked for by -Pkafka: it takes as long as the oracle on the other log")
@Timeout(value = 10, unit = TimeUnit.MINUTES)
class OracleOnKafkaTest extends OracleTest {

  @RegisterExtension static final Broker BROKER = new Broker();

  @Override
  String log() {
    return BROKER.setting(BROKER.newPrefix());
  }
}
