package withers.log.kafka;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.RandomEvents;
import withers.kafka.Broker;
import withers.kafka.KafkaCluster;
import withers.kafka.KafkaSettings;
import withers.kafka.UnsureBroker;
import withers.kafka.UnsureBroker.Fate;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.SampleMarkers;

/** Commits whose end the broker tells as an error that is none of those that Kafka names. */
@Tag("kafka")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Timeout(value = 1, unit = TimeUnit.MINUTES)
class CommitsTest {
  private static final long SEED = 52;

  @RegisterExtension static final Broker BROKER = new Broker();

  private final String prefix = BROKER.newPrefix();
  private final ImportMarker marker =
      SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "clinic");
  private final List<ChipEvent> events = new RandomEvents(SEED).events(10);

  @AfterEach
  void drop() {
    BROKER.drop(prefix);
  }

  @ParameterizedTest
  @EnumSource
  void an_import_is_committed_once_whatever_the_broker_did_before_it_answered(Fate fate)
      throws Exception {
    try (UnsureBroker unsure = new UnsureBroker(BROKER.address());
        EventLog log = KafkaEventLog.open(cluster(unsure))) {
      log.append(new Batch<>(Streams.CHIPS, 3, marker.id(), 0, events));
      unsure.answerNextWithoutAName(fate);
      log.commit(marker);
      assertThat(unsure.answersWithoutAName()).isEqualTo(1);
      assertCommitted(log.snapshot());
    }
    try (EventLog log = BROKER.log(prefix)) {
      assertCommitted(log.snapshot());
    }
  }

  private KafkaCluster cluster(UnsureBroker unsure) {
    return new KafkaCluster(
        KafkaSettings.open(unsure.address(), prefix),
        Path.of(""),
        file -> "",
        Duration.ofSeconds(20));
  }

  private void assertCommitted(LogSnapshot snapshot) {
    assertThat(snapshot.markers()).containsExactly(marker);
    List<ChipEvent> replayed = new ArrayList<>();
    snapshot.replay(Streams.CHIPS, 3, (event, by) -> replayed.add(event));
    assertThat(replayed).as("seed %d", SEED).isEqualTo(events);
  }
}
