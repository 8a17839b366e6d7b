package withers.bench;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.TopicPartition;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.kafka.KafkaCluster;
import withers.kafka.KafkaSettings;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.LogSnapshot;
import withers.log.SampleMarkers;
import withers.log.kafka.KafkaEventLog;

/**
 * One piece of work with the log on Kafka in a JVM of its own, cold as Kafka's tools are beside it.
 * Prints how many seconds it took, and how many events it got through.
 */
final class KafkaWork {
  private static final int CHUNK = 1000;

  /** Appended together: as many events as an import holds at a time. */
  private static final int TOGETHER = 64;

  /** The same events come again, so that many fit into little memory. */
  private static final int REPEATS = 10;

  private static final int DISTINCT = 300;
  private static final long SEED = 20260301;

  private KafkaWork() {}

  static int chunks() {
    return DISTINCT * REPEATS;
  }

  /** What is appended, a chunk each. */
  static List<List<ChipEvent>> events() {
    RegistryEvents registry = new RegistryEvents(SEED);
    return IntStream.range(0, DISTINCT).mapToObj(i -> registry.next(CHUNK)).toList();
  }

  static byte[] encoded(List<ChipEvent> events) {
    return Streams.CHIPS.codec().encode(events);
  }

  static KafkaCluster cluster(String address, String prefix) {
    return new KafkaCluster(
        KafkaSettings.open(address, prefix), Path.of(""), file -> "", Duration.ofMinutes(1));
  }

  /**
   * Does one piece of work.
   *
   * @param args its name, the broker's address, the prefix of topics
   */
  public static void main(String... args) throws Exception {
    Stopwatch watch = new Stopwatch();
    KafkaCluster cluster = cluster(args[1], args[2]);
    long events =
        switch (args[0]) {
          case "append" -> append(cluster, watch);
          case "send" -> send(cluster, watch);
          case "encode" -> encode(watch);
          case "replay" -> replay(cluster, watch);
          case "read" -> read(cluster, watch);
          case "decode" -> decode(watch);
          default -> throw new IllegalArgumentException(args[0]);
        };
    System.out.printf(Locale.ROOT, "%.4f %d%n", watch.seconds(), events);
  }

  /** The log: encodes, sends, waits until all have it, and makes it visible. */
  private static long append(KafkaCluster cluster, Stopwatch watch) throws Exception {
    List<List<ChipEvent>> all = events();
    try (EventLog log = KafkaEventLog.open(cluster)) {
      return watch.time(
          () -> {
            appendAll(log, batches(all));
            log.commit(SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "bench"));
            return (long) chunks() * CHUNK;
          });
    }
  }

  /** Encodes what comes next while it waits for the broker. */
  private static void appendAll(EventLog log, List<List<Batch<ChipEvent>>> groups) {
    CompletableFuture<EventLog.Appending> next = prepared(log, groups.get(0));
    for (int i = 1; i <= groups.size(); i++) {
      EventLog.Appending now = next.join();
      if (i < groups.size()) {
        next = prepared(log, groups.get(i));
      }
      now.append();
    }
  }

  private static CompletableFuture<EventLog.Appending> prepared(
      EventLog log, List<Batch<ChipEvent>> group) {
    return CompletableFuture.supplyAsync(() -> log.prepare(group));
  }

  private static List<List<Batch<ChipEvent>>> batches(List<List<ChipEvent>> all) {
    Map<Integer, Integer> sequences = new HashMap<>();
    List<List<Batch<ChipEvent>>> groups = new ArrayList<>();
    for (int i = 0; i < chunks(); i++) {
      if (i % TOGETHER == 0) {
        groups.add(new ArrayList<>());
      }
      int partition = partition(i);
      int sequence = sequences.merge(partition, 1, Integer::sum) - 1;
      groups
          .get(groups.size() - 1)
          .add(
              new Batch<>(
                  Streams.CHIPS, partition, SampleMarkers.id(1), sequence, all.get(i % DISTINCT)));
    }
    return groups;
  }

  static int partition(int chunk) {
    return chunk % Streams.CHIPS.partitions();
  }

  /** The same chunks, encoded before, by the bare client. */
  private static long send(KafkaCluster cluster, Stopwatch watch) throws Exception {
    List<byte[]> chunks = events().stream().map(KafkaWork::encoded).toList();
    String topic = cluster.settings().topic("chips");
    try (Producer<byte[], byte[]> producer = cluster.producer()) {
      producer.partitionsFor(topic);
      return watch.time(
          () -> {
            List<Future<RecordMetadata>> sent = new ArrayList<>();
            for (int i = 0; i < chunks(); i++) {
              sent.add(
                  producer.send(
                      new ProducerRecord<>(topic, partition(i), null, chunks.get(i % DISTINCT))));
            }
            for (Future<RecordMetadata> one : sent) {
              one.get();
            }
            return (long) chunks() * CHUNK;
          });
    }
  }

  private static long encode(Stopwatch watch) throws Exception {
    List<List<ChipEvent>> all = events();
    return watch.time(
        () -> {
          for (int i = 0; i < REPEATS; i++) {
            all.parallelStream().map(KafkaWork::encoded).forEach(chunk -> {});
          }
          return (long) chunks() * CHUNK;
        });
  }

  /** The log: reads and decodes all events of all partitions, on one thread. */
  private static long replay(KafkaCluster cluster, Stopwatch watch) throws Exception {
    try (EventLog log = KafkaEventLog.open(cluster)) {
      LogSnapshot snapshot = log.snapshot();
      long[] events = {0};
      return watch.time(
          () -> {
            for (int p = 0; p < Streams.CHIPS.partitions(); p++) {
              snapshot.replay(Streams.CHIPS, p, (event, marker) -> events[0]++);
            }
            return events[0];
          });
    }
  }

  /** The same records by the bare client, looked at no further. */
  private static long read(KafkaCluster cluster, Stopwatch watch) throws Exception {
    String topic = cluster.settings().topic("chips");
    List<TopicPartition> partitions =
        IntStream.range(0, Streams.CHIPS.partitions())
            .mapToObj(p -> new TopicPartition(topic, p))
            .toList();
    try (Consumer<byte[], byte[]> consumer = cluster.consumer()) {
      return watch.time(
          () -> {
            consumer.assign(partitions);
            consumer.seekToBeginning(partitions);
            long records = 0;
            while (records < chunks()) {
              records += consumer.poll(Duration.ofMillis(500)).count();
            }
            return records * CHUNK;
          });
    }
  }

  private static long decode(Stopwatch watch) throws Exception {
    List<byte[]> chunks = events().stream().map(KafkaWork::encoded).toList();
    long[] events = {0};
    return watch.time(
        () -> {
          for (int i = 0; i < REPEATS; i++) {
            chunks.forEach(chunk -> Streams.CHIPS.codec().decode(chunk, event -> events[0]++));
          }
          return events[0];
        });
  }
}
