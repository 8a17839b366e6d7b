package withers.work.kafka;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;
import withers.kafka.Broker;
import withers.kafka.KafkaCluster;
import withers.log.LogUnavailableException;
import withers.work.Crew;
import withers.work.Task;

/** Orders, questions, answers and results on a real broker. */
@Tag("kafka")
@DisplayNameGeneration(ReplaceUnderscores.class)
@Timeout(value = 2, unit = TimeUnit.MINUTES)
class SharedWorkTest {
  private static final int PARTS = 4;
  private static final int MANY = 256;
  private static final int LARGE = 2_500_000;

  @RegisterExtension static final Broker BROKER = new Broker();

  private final String prefix = BROKER.newPrefix();
  private final KafkaCluster cluster = BROKER.cluster(prefix);

  @AfterEach
  void drop() {
    BROKER.drop(prefix);
  }

  @Test
  void questions_answers_and_results_may_be_larger_than_a_broker_takes() {
    Map<Integer, byte[]> results = new ConcurrentHashMap<>();
    KafkaCrew crew = crew("run", Duration.ofSeconds(60));
    try (KafkaWorkplace place = place("one")) {
      CompletableFuture<Void> run =
          CompletableFuture.runAsync(() -> crew.work("an order", PARTS, doubling(results)));
      while (!run.isDone()) {
        place.next(Duration.ofMillis(100)).ifPresent(SharedWorkTest::work);
      }
      run.join();
    }

    assertThat(results).hasSize(PARTS);
    results.forEach(
        (part, result) -> {
          assertThat(result).hasSize(LARGE);
          assertThat(result[LARGE - 1]).isEqualTo((byte) (2 * part));
        });
    assertThat(crew.shares()).singleElement().extracting(Crew.Share::parts).isEqualTo(PARTS);
    assertThat(crew.notes()).isEmpty();
  }

  @Test
  void a_topic_of_work_with_other_partitions_is_refused_in_words_of_work() throws Exception {
    make("results", 3, Map.of());
    assertRefused(
        "Expected 1 partitions of the topic %s.work.results, but found 3; shared work has one for each part: delete the topic while nobody works, and it is made anew");
  }

  @Test
  void a_topic_of_work_that_is_kept_otherwise_is_refused_in_words_of_work() throws Exception {
    make("questions", 1, Map.of("retention.ms", "-1", "message.timestamp.type", "LogAppendTime"));
    assertRefused(
        "Expected the topic %s.work.questions to have retention.ms=86400000, but found -1; shared work is kept for a day by the broker's clock: set it, or delete the topic while nobody works, and it is made anew");
  }

  private void make(String name, int partitions, Map<String, String> settings) throws Exception {
    try (Admin admin = BROKER.admin()) {
      NewTopic topic = new NewTopic(prefix + ".work." + name, partitions, (short) 1);
      admin.createTopics(List.of(topic.configs(settings))).all().get();
      while (!admin.listTopics().names().get().contains(topic.name())) {
        Thread.onSpinWait(); // the controller knows it before the broker does
      }
    }
  }

  private void assertRefused(String message) {
    assertThatThrownBy(() -> place("one").close())
        .isInstanceOf(LogUnavailableException.class)
        .hasMessage(message.formatted(prefix));
  }

  /** The worker's question holds its part's number, and the answer twice that. */
  private static void work(Task task) {
    assertThat(task.order()).isEqualTo("an order");
    assertThat(task.isAwaited()).isTrue();
    byte[] question = new byte[LARGE];
    Arrays.fill(question, (byte) task.part());
    task.deliver(task.ask(question).orElseThrow());
  }

  private static Crew.Desk doubling(Map<Integer, byte[]> results) {
    return new Crew.Desk() {
      @Override
      public byte[] answer(byte[] question) {
        byte[] answer = question.clone();
        for (int i = 0; i < answer.length; i++) {
          answer[i] = (byte) (2 * answer[i]);
        }
        return answer;
      }

      @Override
      public void done(int part, byte[] result) {
        assertThat(results.put(part, result)).as("a part comes once").isNull();
      }
    };
  }

  @Test
  void orders_of_a_run_that_is_gone_are_awaited_by_nobody() {
    crew("gone", Duration.ZERO).work("an order", PARTS, doubling(new ConcurrentHashMap<>()));
    try (KafkaWorkplace place = place("late")) {
      Optional<Task> task = Optional.empty();
      while (task.isEmpty()) {
        task = place.next(Duration.ofMillis(100));
      }
      assertThat(task.orElseThrow().run()).isEqualTo("gone");
      assertThat(task.orElseThrow().isAwaited()).isFalse();
      task.orElseThrow().drop();
    }
  }

  @Test
  void a_part_that_was_not_handed_in_comes_again_and_one_that_was_does_not() {
    crew("gone", Duration.ZERO).work("an order", 1, doubling(new ConcurrentHashMap<>()));
    for (boolean isDropped : new boolean[] {false, true}) {
      try (KafkaWorkplace place = place("again", 1)) {
        Optional<Task> task = Optional.empty();
        while (task.isEmpty()) {
          task = place.next(Duration.ofMillis(100));
        }
        if (isDropped) {
          task.orElseThrow().drop();
        }
      }
    }
    try (KafkaWorkplace place = place("last", 1)) {
      assertThat(place.next(Duration.ofSeconds(5))).isEmpty();
    }
  }

  @Test
  void no_part_is_lost_while_workers_come_and_go() {
    Map<Integer, byte[]> results = new ConcurrentHashMap<>();
    KafkaCrew crew = crew("run", Duration.ofSeconds(60));
    try (KafkaWorkplace staying = place("staying", MANY)) {
      CompletableFuture<Void> run =
          CompletableFuture.runAsync(() -> crew.work("an order", MANY, doubling(results)));
      CompletableFuture<Void> others = CompletableFuture.runAsync(this::comeAndGo);
      serve(staying, run);
      others.join();
      run.join();
    }

    assertThat(results.size()).isEqualTo(MANY);
    assertThat(crew.shares().stream().mapToInt(Crew.Share::parts).sum()).isEqualTo(MANY);
  }

  private void comeAndGo() {
    for (int times = 0; times < 3; times++) {
      try (KafkaWorkplace place = place("passing", MANY)) {
        for (int i = 0; i < 5; i++) {
          place.next(Duration.ofMillis(100)).ifPresent(task -> task.deliver(new byte[1]));
        }
      }
    }
  }

  private static void serve(KafkaWorkplace place, CompletableFuture<Void> run) {
    while (!run.isDone()) {
      place.next(Duration.ofMillis(10)).ifPresent(task -> task.deliver(new byte[1]));
    }
  }

  private KafkaCrew crew(String run, Duration patience) {
    return new KafkaCrew(cluster, new KafkaCrew.Ordered(run, "rules", 2, patience));
  }

  private KafkaWorkplace place(String name) {
    return place(name, PARTS);
  }

  private KafkaWorkplace place(String name, int parts) {
    return KafkaWorkplace.open(
        cluster, new KafkaWorkplace.Worker(name, UUID.randomUUID(), parts, Duration.ofSeconds(60)));
  }
}
