package withers.report.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.common.KafkaException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.RandomEvents;
import withers.kafka.Broker;
import withers.kafka.KafkaCluster;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.SampleMarkers;
import withers.log.Tally;

/** What {@code /metrics} says of the log on a real broker. */
@Tag("kafka")
@DisplayNameGeneration(ReplaceUnderscores.class)
@Timeout(value = 2, unit = TimeUnit.MINUTES)
class KafkaMetricsTest {
  private static final long SEED = 5;
  private static final Duration SHUTTING_OUT = Duration.ofMillis(500);

  @RegisterExtension static final Broker BROKER = new Broker();

  private final String prefix = BROKER.newPrefix();
  private final HttpClient client = HttpClient.newHttpClient();
  private WatchServer server;

  @BeforeEach
  void serve() {
    Standing standing =
        new Standing(
            List.of(),
            List.of(),
            Tally.NOTHING,
            Optional.empty(),
            Map.of(),
            List.of(),
            Map.of(),
            List.of(),
            0);
    server = WatchServer.start("127.0.0.1", 0, new Pulse(Clock.systemUTC()), new Metrics(standing));
  }

  @AfterEach
  void stop() {
    server.close();
    BROKER.drop(prefix);
  }

  @Test
  void bytes_go_up_both_ways_and_the_lag_is_there_while_somebody_reads() {
    List<ChipEvent> events = new RandomEvents(SEED).events(3_000);
    double bytes = Streams.CHIPS.codec().encode(events).length;
    double written = number("withers_kafka_bytes_total{direction=\"written\"}");
    double read = number("withers_kafka_bytes_total{direction=\"read\"}");
    try (EventLog log = BROKER.log(prefix)) {
      log.append(new Batch<>(Streams.CHIPS, 3, SampleMarkers.id(1), 0, events));
      log.commit(SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "alpha"));
      List<Double> lags = new ArrayList<>();
      log.snapshot()
          .replay(
              Streams.CHIPS,
              3,
              (event, marker) -> {
                if (lags.isEmpty()) {
                  lags.add(number("withers_kafka_lag"));
                }
              });

      assertThat(lags).singleElement().satisfies(lag -> assertThat(lag).isGreaterThanOrEqualTo(3));
    }
    assertThat(number("withers_kafka_bytes_total{direction=\"written\"}") - written)
        .isGreaterThan(bytes / 2);
    assertThat(number("withers_kafka_bytes_total{direction=\"read\"}") - read)
        .isGreaterThan(bytes / 2);
    assertThat(number("withers_kafka_lag")).isZero();
  }

  @Test
  void a_commit_that_another_program_shut_out_counts_as_aborted_and_is_repeated() {
    double before = number("withers_kafka_aborts_total");
    int imports = 0;
    try (EventLog log = BROKER.log(prefix)) {
      while (number("withers_kafka_aborts_total") == before) {
        imports++;
        CompletableFuture<Void> other = CompletableFuture.runAsync(this::shutOutForAWhile);
        log.commit(
            SampleMarkers.marker(SampleMarkers.id(imports), Optional.empty(), "c" + imports));
        other.join();
      }
      assertThat(log.snapshot().markers()).hasSize(imports);
    }
  }

  /** Begins to commit again and again, as other programs would, for less time than tries last. */
  private void shutOutForAWhile() {
    KafkaCluster cluster = BROKER.cluster(prefix);
    long begun = System.nanoTime();
    while (System.nanoTime() - begun < SHUTTING_OUT.toNanos()) {
      try (Producer<byte[], byte[]> producer =
          cluster.producer(cluster.settings().topic("commit"))) {
        producer.initTransactions();
      } catch (KafkaException shutOutItself) {
        assertThat(shutOutItself).isNotNull();
      }
    }
  }

  /** A number of the page, by its name and labels. */
  private double number(String name) {
    Matcher line = Pattern.compile("(?m)^" + Pattern.quote(name) + " (\\S+)$").matcher(page());
    assertThat(line.find()).as(name).isTrue();
    return Double.parseDouble(line.group(1));
  }

  private String page() {
    URI metrics = URI.create("http://127.0.0.1:%d/metrics".formatted(server.port()));
    try {
      return client.send(HttpRequest.newBuilder(metrics).build(), BodyHandlers.ofString()).body();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
