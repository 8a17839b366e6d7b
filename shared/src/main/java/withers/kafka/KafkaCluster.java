package withers.kafka;

import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.AdminClientConfig;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.consumer.CooperativeStickyAssignor;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerConfig;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.ByteArraySerializer;

/** Makes clients of one cluster. Safe for several threads; whoever makes a client closes it. */
public final class KafkaCluster {

  /** Long enough for a broker that is busy, short enough for a person who waits. */
  private static final int SECONDS = 15;

  private static final int LARGEST_REQUEST = 16 << 20;
  private static final int BATCH_BYTES = 256 << 10;
  private static final int FETCH_BYTES = 4 << 20;
  private static final int LINGER_MILLIS = 1;

  /** How long records wait for company: see {@link #gatheringProducer}. */
  public static final int GATHERING_MILLIS = 1000;

  /**
   * Readers stop at a known end. Clients fetch ahead, though, and a fetch that waits at the end for
   * records to come would hold up the consumer's next use.
   */
  public static final int FETCH_WAIT_MILLIS = 1;

  /** A member of a group that takes longer for one record is taken for dead. */
  private static final int LONGEST_TASK_MILLIS = 15 * 60_000;

  /** So is one that is not heard of for so long; brokers take no less than 6 seconds by default. */
  private static final int DEAD_AFTER_MILLIS = 10_000;

  /**
   * Who is told of the clients' own metrics. We count for ourselves ({@link KafkaCounts}), and to
   * have each one registered with the JVM, anew for each partition read, costs a short command more
   * than what it reads.
   */
  private static final List<String> NOBODY = List.of();

  /** As much as the system thinks right for the connection, which Kafka's own default is not. */
  private static final int SYSTEM_DECIDES = -1;

  private final KafkaSettings settings;
  private final Map<String, Object> security;
  private final Duration patience;

  /**
   * @param folder what the settings' files are named from
   * @param password reads the password file
   * @param patience how long to wait for a broker before giving up
   */
  public KafkaCluster(
      KafkaSettings settings, Path folder, Function<Path, String> password, Duration patience) {
    this.settings = settings;
    this.security = Map.copyOf(new SecurityProperties(folder, password).of(settings));
    this.patience = patience;
  }

  /** Waits for a broker for {@value #SECONDS} seconds. */
  public KafkaCluster(KafkaSettings settings, Path folder, Function<Path, String> password) {
    this(settings, folder, password, Duration.ofSeconds(SECONDS));
  }

  public KafkaSettings settings() {
    return settings;
  }

  /** How long to wait for a broker before giving up. */
  public Duration patience() {
    return patience;
  }

  public Admin admin() {
    Map<String, Object> config = common();
    config.put(AdminClientConfig.DEFAULT_API_TIMEOUT_MS_CONFIG, millis(patience));
    return Admin.create(config);
  }

  /** A producer whose records arrive once each and in order, all replicas having them. */
  public Producer<byte[], byte[]> producer() {
    return new KafkaProducer<>(producing(LINGER_MILLIS));
  }

  /**
   * The same for many records, which wait up to {@value #GATHERING_MILLIS} ms for others of their
   * partition, to travel and be stored together. Whoever waits for one flushes first.
   */
  public Producer<byte[], byte[]> gatheringProducer() {
    return new KafkaProducer<>(producing(GATHERING_MILLIS));
  }

  /** A producer that shuts out earlier ones of the same id, once its transactions have begun. */
  public Producer<byte[], byte[]> producer(String transactionalId) {
    Map<String, Object> config = producing(LINGER_MILLIS);
    config.put(ProducerConfig.TRANSACTIONAL_ID_CONFIG, transactionalId);
    config.put(ProducerConfig.TRANSACTION_TIMEOUT_CONFIG, millis(patience));
    return new KafkaProducer<>(config);
  }

  /**
   * A consumer of partitions that its caller assigns and positions. It shows no transaction that
   * isn't committed, and never makes up a position.
   */
  public Consumer<byte[], byte[]> consumer() {
    Map<String, Object> config = reading();
    config.put(ConsumerConfig.AUTO_OFFSET_RESET_CONFIG, "none");
    config.put(ConsumerConfig.FETCH_MAX_WAIT_MS_CONFIG, FETCH_WAIT_MILLIS);
    return new KafkaConsumer<>(config);
  }

  private Map<String, Object> reading() {
    Map<String, Object> config = common();
    config.put(ConsumerConfig.DEFAULT_API_TIMEOUT_MS_CONFIG, millis(patience));
    config.put(ConsumerConfig.ISOLATION_LEVEL_CONFIG, "read_committed");
    config.put(ConsumerConfig.ENABLE_AUTO_COMMIT_CONFIG, false);
    config.put(ConsumerConfig.INTERCEPTOR_CLASSES_CONFIG, ClientCounts.class.getName());
    config.put(ConsumerConfig.ALLOW_AUTO_CREATE_TOPICS_CONFIG, false);
    config.put(ConsumerConfig.MAX_PARTITION_FETCH_BYTES_CONFIG, FETCH_BYTES);
    config.put(ConsumerConfig.RECEIVE_BUFFER_CONFIG, SYSTEM_DECIDES);
    config.put(ConsumerConfig.KEY_DESERIALIZER_CLASS_CONFIG, ByteArrayDeserializer.class);
    config.put(ConsumerConfig.VALUE_DESERIALIZER_CLASS_CONFIG, ByteArrayDeserializer.class);
    return config;
  }

  /**
   * A consumer of a group, which assigns partitions by itself and takes over those of a member that
   * died. It begins where the group ended, takes one record at a time, and commits by its caller's
   * transactions.
   */
  public Consumer<byte[], byte[]> consumer(String group) {
    Map<String, Object> config = reading();
    config.put(ConsumerConfig.GROUP_ID_CONFIG, group);
    config.put(ConsumerConfig.AUTO_OFFSET_RESET_CONFIG, "earliest");
    config.put(ConsumerConfig.MAX_POLL_RECORDS_CONFIG, 1);
    config.put(ConsumerConfig.MAX_POLL_INTERVAL_MS_CONFIG, LONGEST_TASK_MILLIS);
    config.put(ConsumerConfig.SESSION_TIMEOUT_MS_CONFIG, DEAD_AFTER_MILLIS);
    config.put(ConsumerConfig.HEARTBEAT_INTERVAL_MS_CONFIG, DEAD_AFTER_MILLIS / 4);
    config.put(
        ConsumerConfig.PARTITION_ASSIGNMENT_STRATEGY_CONFIG,
        CooperativeStickyAssignor.class.getName());
    return new KafkaConsumer<>(config);
  }

  private Map<String, Object> producing(int lingerMillis) {
    Map<String, Object> config = common();
    config.put(ProducerConfig.ACKS_CONFIG, "all");
    config.put(ProducerConfig.ENABLE_IDEMPOTENCE_CONFIG, true);
    config.put(ProducerConfig.COMPRESSION_TYPE_CONFIG, "zstd");
    config.put(ProducerConfig.BATCH_SIZE_CONFIG, BATCH_BYTES);
    config.put(ProducerConfig.MAX_REQUEST_SIZE_CONFIG, LARGEST_REQUEST);
    config.put(ProducerConfig.MAX_BLOCK_MS_CONFIG, millis(patience));
    config.put(ProducerConfig.DELIVERY_TIMEOUT_MS_CONFIG, millis(patience) + lingerMillis);
    config.put(ProducerConfig.LINGER_MS_CONFIG, lingerMillis);
    config.put(ProducerConfig.INTERCEPTOR_CLASSES_CONFIG, ClientCounts.class.getName());
    config.put(ProducerConfig.KEY_SERIALIZER_CLASS_CONFIG, ByteArraySerializer.class);
    config.put(ProducerConfig.VALUE_SERIALIZER_CLASS_CONFIG, ByteArraySerializer.class);
    return config;
  }

  private Map<String, Object> common() {
    Map<String, Object> config = new HashMap<>(security);
    config.put(AdminClientConfig.BOOTSTRAP_SERVERS_CONFIG, settings.bootstrapServers());
    config.put(AdminClientConfig.CLIENT_ID_CONFIG, settings.topicPrefix());
    config.put(AdminClientConfig.REQUEST_TIMEOUT_MS_CONFIG, millis(patience));
    config.put(AdminClientConfig.ENABLE_METRICS_PUSH_CONFIG, false);
    config.put(AdminClientConfig.METRIC_REPORTER_CLASSES_CONFIG, NOBODY);
    return config;
  }

  private static int millis(Duration duration) {
    return Math.toIntExact(duration.toMillis());
  }
}
