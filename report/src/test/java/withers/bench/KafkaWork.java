package withers.bench;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
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

  private static final int DISTINCT = 300;
  private static final long SEED = 20260301;

  /** The same events come again so often, so that many fit into little memory. */
  private final int repeats;

  KafkaWork(int repeats) {
    this.repeats = repeats;
  }

  int chunks() {
    return DISTINCT * repeats;
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
   * @param args its name, the broker's address, the prefix of topics, how often the events come
   */
  public static void main(String... args) throws Exception {
    Stopwatch watch = new Stopwatch();
    KafkaCluster cluster = cluster(args[1], args[2]);
    long events = new KafkaWork(Integer.parseInt(args[3])).work(args[0], cluster, watch);
    System.out.printf(Locale.ROOT, "%.4f %d%n", watch.seconds(), events);
  }

  private long work(String name, KafkaCluster cluster, Stopwatch watch) throws Exception {
    return switch (name) {
      case "append" -> append(cluster, watch);
      case "send" -> send(cluster, watch);
      case "encode" -> encode(watch);
      case "replay" -> replay(cluster, watch, Runtime.getRuntime().availableProcessors());
      case "replay-alone" -> replay(cluster, watch, 1);
      case "read" -> read(cluster, watch);
      case "decode" -> decode(watch);
      default -> throw new IllegalArgumentException(name);
    };
  }

  /** The log: encodes, sends, waits until all have it, and makes it visible. */
  private long append(KafkaCluster cluster, Stopwatch watch) throws Exception {
    List<List<ChipEvent>> all = events();
    try (EventLog log = KafkaEventLog.open(cluster)) {
      return watch.time(
          () -> {
            appendAll(log, all);
            log.commit(SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "bench"));
            return (long) chunks() * CHUNK;
          });
    }
  }

  /** Encodes the next group while one is sent, as an import does. */
  private void appendAll(EventLog log, List<List<ChipEvent>> all) {
    CompletableFuture<EventLog.Appending> next = prepared(log, all, 0);
    for (int from = 0; from < chunks(); from += TOGETHER) {
      EventLog.Appending now = next.join();
      next = prepared(log, all, from + TOGETHER);
      now.append();
    }
  }

  private CompletableFuture<EventLog.Appending> prepared(
      EventLog log, List<List<ChipEvent>> all, int from) {
    return CompletableFuture.supplyAsync(() -> log.prepare(batches(all, from)));
  }

  private List<Batch<ChipEvent>> batches(List<List<ChipEvent>> all, int from) {
    return IntStream.range(from, Math.min(chunks(), from + TOGETHER))
        .mapToObj(chunk -> batch(chunk, all.get(chunk % DISTINCT)))
        .toList();
  }

  private static Batch<ChipEvent> batch(int chunk, List<ChipEvent> events) {
    int sequence = chunk / Streams.CHIPS.partitions();
    return new Batch<>(Streams.CHIPS, partition(chunk), SampleMarkers.id(1), sequence, events);
  }

  static int partition(int chunk) {
    return chunk % Streams.CHIPS.partitions();
  }

  /** The same chunks, encoded before, by the bare client. */
  private long send(KafkaCluster cluster, Stopwatch watch) throws Exception {
    List<byte[]> chunks = events().stream().map(KafkaWork::encoded).toList();
    String topic = cluster.settings().topic("chips");
    try (Producer<byte[], byte[]> producer = cluster.gatheringProducer()) {
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

  private long encode(Stopwatch watch) throws Exception {
    List<List<ChipEvent>> all = events();
    return watch.time(
        () -> {
          for (int i = 0; i < repeats; i++) {
            all.parallelStream().map(KafkaWork::encoded).forEach(chunk -> {});
          }
          return (long) chunks() * CHUNK;
        });
  }

  /** The log: reads and decodes all events of all partitions, those shared out among threads. */
  private static long replay(KafkaCluster cluster, Stopwatch watch, int threads) throws Exception {
    try (EventLog log = KafkaEventLog.open(cluster)) {
      LogSnapshot snapshot = log.snapshot();
      return watch.time(() -> replay(snapshot, threads));
    }
  }

  private static long replay(LogSnapshot snapshot, int threads) throws Exception {
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Callable<Long>> partitions =
          IntStream.range(0, Streams.CHIPS.partitions())
              .<Callable<Long>>mapToObj(partition -> () -> count(snapshot, partition))
              .toList();
      long events = 0;
      for (Future<Long> one : pool.invokeAll(partitions)) {
        events += one.get();
      }
      return events;
    } finally {
      pool.shutdown();
    }
  }

  private static long count(LogSnapshot snapshot, int partition) {
    long[] events = {0};
    snapshot.replay(Streams.CHIPS, partition, (event, marker) -> events[0]++);
    return events[0];
  }

  /** The same records by the bare client, looked at no further. */
  private long read(KafkaCluster cluster, Stopwatch watch) throws Exception {
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

  private long decode(Stopwatch watch) throws Exception {
    List<byte[]> chunks = events().stream().map(KafkaWork::encoded).toList();
    long[] events = {0};
    return watch.time(
        () -> {
          for (int i = 0; i < repeats; i++) {
            chunks.forEach(chunk -> Streams.CHIPS.codec().decode(chunk, event -> events[0]++));
          }
          return events[0];
        });
  }
}
