package withers.log.kafka;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.stream.LongStream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import withers.kafka.ThreeBrokers;
import withers.log.EventLog;
import withers.log.LogUnavailableException;

/**
 * Three brokers and a client that imports, any of which are killed at any moment. {@code
 * -Dbrokers.rounds=N} asks for more rounds, {@code -Dbrokers.seed=S} for one.
 */
@Tag("kafka")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Timeout(value = 5, unit = TimeUnit.MINUTES)
class BrokersKilledTest {

  /** So many the profile {@code kafka} asks for. */
  private static final long MANY = 20;

  private static final long FEW = 3;

  @TempDir static Path folder;
  private static ThreeBrokers brokers;

  @BeforeAll
  static void start() {
    brokers = ThreeBrokers.start(folder);
  }

  @AfterAll
  static void stop() {
    brokers.close();
  }

  static LongStream seeds() {
    Long one = Long.getLong("brokers.seed");
    long rounds = Boolean.getBoolean("withers.kafka") ? MANY : FEW;
    return one != null
        ? LongStream.of(one)
        : LongStream.rangeClosed(1, Long.getLong("brokers.rounds", rounds));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void every_committed_import_is_there_once_and_nothing_else_is_ever_seen(long seed)
      throws Exception {
    Mishaps mishaps = new Mishaps(seed, brokers, "round-" + seed);
    try (Watching watching = new Watching(brokers, "round-" + seed, new Load(seed))) {
      mishaps.untilDone();
      assertThat(watching.replays()).as("replays meanwhile, seed %d", seed).isPositive();
    }
    try (EventLog log = brokers.log("round-" + seed, ImportingClient.PATIENCE)) {
      assertThat(new Load(seed).check(log.snapshot()))
          .as("imports with seed %d", seed)
          .containsExactlyInAnyOrderElementsOf(Load.all().boxed().toList())
          .containsSubsequence(mishaps.committed());
    }
    brokers.drop("round-" + seed);
  }

  @Test
  void one_of_three_that_is_lost_is_not_noticed() throws Exception {
    Load load = new Load(41);
    try (EventLog log = brokers.log("one-lost", ImportingClient.PATIENCE)) {
      load.append(log, 0);
      brokers.kill(0);
      load.commit(log, 0);
      load.append(log, 1);
      load.commit(log, 1);
      assertThat(load.check(log.snapshot())).containsExactly(0, 1);
    } finally {
      restart();
    }
    brokers.drop("one-lost");
  }

  @Test
  void without_a_majority_nothing_is_committed_and_the_message_says_what_to_do() throws Exception {
    Load load = new Load(42);
    try (EventLog log = brokers.log("two-lost", Duration.ofSeconds(3))) {
      load.append(log, 0);
      brokers.kill(1);
      brokers.kill(2);
      assertUnavailable(() -> load.append(log, 1));
      assertUnavailable(() -> load.commit(log, 0));
    } finally {
      restart();
    }
    try (EventLog log = brokers.log("two-lost", ImportingClient.PATIENCE)) {
      assertThat(load.check(log.snapshot())).isEmpty();
      log.sweep();
      load.append(log, 0);
      load.commit(log, 0);
      assertThat(load.check(log.snapshot())).containsExactly(0);
    }
    brokers.drop("two-lost");
  }

  private static void assertUnavailable(ThrowingCallable work) {
    assertThatThrownBy(work)
        .isInstanceOf(LogUnavailableException.class)
        .hasMessageMatching(
            "Expected a Kafka broker at .*, but none answered within 3 seconds; see that it runs.*"
                + "|Kafka at .* has too few replicas in step.*");
  }

  private static void restart() {
    brokers.launchMissing();
    brokers.awaitReady();
  }
}
