package withers.work.kafka;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.common.TopicPartition;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;
import withers.codec.Streams;
import withers.kafka.Broker;
import withers.kafka.TopicPlan;
import withers.work.Crew;
import withers.work.Task;

/** docs/events.asyncapi.yaml tells what is on the topics of shared work: this, and no other. */
@Tag("kafka")
@DisplayNameGeneration(ReplaceUnderscores.class)
@Timeout(value = 2, unit = TimeUnit.MINUTES)
class PublishedWorkTest {
  private static final JsonMapper MAPPER = new JsonMapper();
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final int PARTS = 2;

  @RegisterExtension static final Broker BROKER = new Broker();

  private static JsonNode document;

  private final String prefix = BROKER.newPrefix();
  private final WorkTopics topics = new WorkTopics(KafkaCrew.troubles(BROKER.cluster(prefix)));

  @BeforeAll
  static void read() throws IOException {
    String yaml = Files.readString(Path.of("..", "docs", "events.asyncapi.yaml"));
    document = MAPPER.valueToTree(new Load(LoadSettings.builder().build()).loadFromString(yaml));
  }

  @AfterEach
  void drop() {
    BROKER.drop(prefix);
  }

  @Test
  void topics_have_the_partitions_and_the_retention_that_are_published() {
    for (TopicPlan plan : topics.plans(Streams.CHIPS.partitions())) {
      JsonNode kafka = channel(plan.name()).at("/bindings/kafka");
      assertThat(kafka.get("partitions").intValue()).isEqualTo(plan.partitions());
      JsonNode settings = kafka.get("topicConfiguration");
      assertThat(settings.get("cleanup.policy").get(0).stringValue())
          .isEqualTo(plan.settings().get("cleanup.policy"));
      assertThat(settings.get("retention.ms").asString())
          .isEqualTo(plan.settings().get("retention.ms"));
    }
  }

  @Test
  void every_message_of_a_run_is_published_with_its_headers() {
    List<ConsumerRecord<byte[], byte[]>> records = recordsOfARun();

    Set<String> seen = new HashSet<>();
    records.forEach(record -> seen.add(isAsPublished(record)));
    assertThat(seen).isEqualTo(publishedMessages());
  }

  /** One part is judged, the other refused. */
  private List<ConsumerRecord<byte[], byte[]>> recordsOfARun() {
    KafkaCrew crew =
        new KafkaCrew(BROKER.cluster(prefix), new KafkaCrew.Ordered("run", "rules", 1, PATIENCE));
    try (KafkaWorkplace place =
        KafkaWorkplace.open(
            BROKER.cluster(prefix),
            new KafkaWorkplace.Worker("here/1", new UUID(0, 1), PARTS, PATIENCE))) {
      CompletableFuture<Void> run =
          CompletableFuture.runAsync(() -> crew.work("an order", PARTS, echo()));
      while (!run.isDone()) {
        place.next(Duration.ofMillis(100)).ifPresent(PublishedWorkTest::judgeOrRefuse);
      }
      run.join();
    }
    return all();
  }

  private static void judgeOrRefuse(Task task) {
    assertThat(task.isAwaited()).isTrue();
    if (task.part() == 0) {
      task.deliver(task.ask(new byte[] {7}).orElseThrow());
    } else {
      task.refuse();
    }
  }

  private static Crew.Desk echo() {
    return new Crew.Desk() {
      @Override
      public byte[] answer(byte[] question) {
        return question;
      }

      @Override
      public void done(int part, byte[] result) {
        assertThat(part).isZero();
      }
    };
  }

  private List<ConsumerRecord<byte[], byte[]>> all() {
    List<TopicPartition> partitions =
        topics.plans(PARTS).stream()
            .flatMap(
                plan ->
                    IntStream.range(0, plan.partitions())
                        .mapToObj(partition -> new TopicPartition(plan.name(), partition)))
            .toList();
    List<ConsumerRecord<byte[], byte[]>> records = new ArrayList<>();
    try (Consumer<byte[], byte[]> consumer = BROKER.cluster(prefix).consumer()) {
      consumer.assign(partitions);
      consumer.seekToBeginning(partitions);
      Map<TopicPartition, Long> ends = consumer.endOffsets(partitions);
      while (ends.entrySet().stream()
          .anyMatch(end -> consumer.position(end.getKey()) < end.getValue())) {
        consumer.poll(Duration.ofMillis(100)).forEach(records::add);
      }
    }
    return records;
  }

  /** Checks it, and returns the name of its message. */
  private String isAsPublished(ConsumerRecord<byte[], byte[]> record) {
    Map<String, String> headers = new TreeMap<>();
    record.headers().forEach(one -> headers.put(one.key(), new String(one.value(), UTF_8)));
    JsonNode message =
        at(channel(record.topic()).get("messages").get(headers.get("type"))).orElseThrow();
    ObjectNode published = ((ObjectNode) at(message.get("headers")).orElseThrow()).deepCopy();
    published.put("additionalProperties", false);
    Schema schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(published);

    assertThat(schema.validate(MAPPER.valueToTree(headers))).as(headers.toString()).isEmpty();
    assertThat(record.key()).isNull();
    headers.remove("run");
    assertThat(schema.validate(MAPPER.valueToTree(headers))).isNotEmpty();
    return message.get("name").stringValue();
  }

  private Set<String> publishedMessages() {
    Set<String> names = new HashSet<>();
    topics
        .plans(PARTS)
        .forEach(plan -> names.addAll(channel(plan.name()).get("messages").propertyNames()));
    return names;
  }

  private JsonNode channel(String topic) {
    String address = "{prefix}" + topic.substring(prefix.length());
    return document
        .get("channels")
        .valueStream()
        .filter(channel -> channel.get("address").stringValue().equals(address))
        .findFirst()
        .orElseThrow();
  }

  /** What a reference within the document points to. */
  private static Optional<JsonNode> at(JsonNode reference) {
    JsonNode found = document.at(reference.get("$ref").stringValue().substring(1));
    return found.isMissingNode() ? Optional.empty() : Optional.of(found);
  }
}
