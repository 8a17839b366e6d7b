package withers.kafka;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.RandomEvents;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.LogSnapshot;
import withers.log.SampleMarkers;

/** What is counted while a log is written and read. */
@Tag("kafka")
@DisplayNameGeneration(ReplaceUnderscores.class)
@Timeout(value = 2, unit = TimeUnit.MINUTES)
class KafkaCountsTest {

  @RegisterExtension static final Broker BROKER = new Broker();

  private final String prefix = BROKER.newPrefix();
  private final KafkaCounts counts = KafkaCounts.ofThisProcess();

  @AfterEach
  void drop() {
    BROKER.drop(prefix);
  }

  @Test
  void bytes_count_both_ways_and_the_lag_is_there_while_somebody_reads() {
    List<ChipEvent> events = new RandomEvents(5).events(3_000);
    long bytes = Streams.CHIPS.codec().encode(events).length;
    try (EventLog log = BROKER.log(prefix)) {
      long written = counts.bytesWritten();
      log.append(new Batch<>(Streams.CHIPS, 3, SampleMarkers.id(1), 0, events));
      assertThat(counts.bytesWritten() - written).isGreaterThan(bytes / 2);
      log.commit(SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "alpha"));
      LogSnapshot snapshot = log.snapshot();
      long read = counts.bytesRead();
      List<Long> lags = new ArrayList<>();

      snapshot.replay(Streams.CHIPS, 3, (event, marker) -> lags.add(counts.lag()));

      assertThat(counts.bytesRead() - read).isGreaterThan(bytes / 2);
      assertThat(lags).hasSize(3_000).allMatch(lag -> lag >= 0).anyMatch(lag -> lag >= 3);
      assertThat(counts.lag()).isZero();
    }
  }
}
