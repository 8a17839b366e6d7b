package withers.log.kafka;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.jspecify.annotations.Nullable;
import withers.id.ImportId;
import withers.kafka.KafkaCluster;
import withers.kafka.KafkaTroubles;
import withers.kafka.Topics;
import withers.log.Batch;
import withers.log.Contents;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogDamagedException;
import withers.log.LogSnapshot;
import withers.log.LogUnavailableException;
import withers.log.StaleParentException;

/**
 * The log on Apache Kafka: each stream a topic, each chunk of about a thousand events a record, and
 * a topic of import markers that make them visible. Nothing is ever deleted: what {@link #sweep}
 * removes is written off and stays where it is, invisible. Several programs may have it open.
 */
public final class KafkaEventLog implements EventLog {
  private static final Duration CLOSING = Duration.ofSeconds(5);

  private final KafkaTroubles troubles;
  private final LogTopics topics;
  private final Consumers consumers;
  private final JournalReader journal;
  private final OpenImports imports;
  private final Commits commits;
  private final ChunkScan scan;
  private final Sent sent;
  private final Object committing = new Object();
  private @Nullable Producer<byte[], byte[]> producer;
  private volatile boolean closed;

  private KafkaEventLog(KafkaCluster cluster) {
    this.troubles =
        new KafkaTroubles(
            "event log", cluster, LogUnavailableException::new, LogDamagedException::new);
    this.topics = new LogTopics(troubles);
    this.consumers = new Consumers(troubles);
    this.journal = new JournalReader(troubles, consumers, topics.imports());
    this.imports = new OpenImports(journal, this::begin);
    this.commits = new Commits(troubles);
    this.scan = new ChunkScan(troubles, consumers, topics);
    this.sent = new Sent(imports::arrived);
  }

  /**
   * Opens the log; makes topics that nothing was written to yet.
   *
   * @throws LogUnavailableException when no broker answers in time or it refuses, a topic is not as
   *     it must be, or a newer program wrote to it
   * @throws LogDamagedException when the markers are not as they were written
   */
  public static KafkaEventLog open(KafkaCluster cluster) {
    KafkaEventLog log = new KafkaEventLog(cluster);
    try {
      log.prepare();
      return log;
    } catch (RuntimeException e) {
      log.close();
      throw e;
    }
  }

  private void prepare() {
    try (Admin admin = troubles.trying(troubles.cluster()::admin)) {
      Topics all = new Topics(admin, troubles);
      Set<String> missing = topics.prepareImports(all);
      journal.refresh();
      if (!missing.isEmpty()) {
        topics.makeMissing(all, missing, journal.committed());
      }
    }
  }

  @Override
  public <E> void append(Batch<E> batch) {
    appendAll(List.of(batch));
  }

  @Override
  public void appendAll(List<? extends Batch<?>> batches) {
    prepare(batches).append();
    batches.stream().map(Batch::importId).distinct().forEach(this::awaitArrival);
  }

  @Override
  public Appending prepare(List<? extends Batch<?>> batches) {
    batches.forEach(batch -> topics.topic(batch.stream()));
    record Encoded(ImportId id, List<Chunk> chunks) {}
    List<Encoded> encoded =
        batches.parallelStream()
            .map(batch -> new Encoded(batch.importId(), Chunks.of(batch)))
            .toList();
    return () -> {
      Map<ImportId, List<Chunk>> byImport =
          encoded.stream()
              .collect(
                  Collectors.groupingBy(
                      Encoded::id,
                      Collectors.flatMapping(one -> one.chunks().stream(), Collectors.toList())));
      byImport.forEach(this::send);
    };
  }

  // Not waited for: records of one partition travel together, and the next are encoded meanwhile.
  private void send(ImportId id, List<Chunk> chunks) {
    requireOpen();
    Attempt attempt = imports.attempt(id);
    troubles.trying(
        () -> {
          for (Chunk chunk : chunks) {
            String topic = topics.partition(chunk.place()).topic();
            sent.add(id, chunk, producer().send(chunk.record(topic, attempt)));
          }
          sent.look(id);
          return attempt;
        });
  }

  private void awaitArrival(ImportId id) {
    troubles.trying(
        () -> {
          producer().flush();
          sent.await(id);
          return id;
        });
  }

  private long begin(ImportId id) {
    return troubles.trying(
        () -> {
          Future<RecordMetadata> begun =
              producer().send(JournalEntries.begun(topics.imports(), id, scan.ends()));
          producer().flush();
          return begun.get().offset();
        });
  }

  private synchronized Producer<byte[], byte[]> producer() {
    Producer<byte[], byte[]> open = producer;
    if (open == null) {
      open = troubles.cluster().gatheringProducer();
      producer = open;
    }
    return open;
  }

  @Override
  public void commit(ImportMarker marker) {
    requireOpen();
    awaitArrival(marker.id());
    synchronized (committing) {
      commits.append(
          marker.id().hashCode(),
          number -> {
            journal.refresh();
            if (number > 1 && journal.holds(marker)) {
              return Optional.empty();
            }
            requireNext(marker);
            return Optional.of(JournalEntries.marker(topics.imports(), committed(marker)));
          });
      journal.await(now -> now.isCommitted(marker.id()));
      forget(marker.id());
    }
  }

  private void forget(ImportId id) {
    imports.forget(id);
    sent.forget(id);
  }

  private void requireNext(ImportMarker marker) {
    journal.requireUncommitted(marker.id());
    if (!journal.newest(marker.chain()).equals(marker.parent())) {
      throw new StaleParentException(marker.chain());
    }
  }

  private Committed committed(ImportMarker marker) {
    return begun(marker.id())
        .map(begun -> new Committed(marker, contents(begun), begun.attempt()))
        .orElseGet(() -> withoutChunks(marker));
  }

  // The attempt that the chunks were written under. Another at the same import may have come to
  // light since: one that was begun by a program that died while fewer brokers than it takes
  // could acknowledge it.
  private Optional<Begun> begun(ImportId id) {
    return imports.begun(id).map(journal::underWay).orElseGet(() -> journal.underWay(id));
  }

  private Contents contents(Begun begun) {
    return imports.contents(begun.attempt().importId()).orElseGet(() -> scan.contents(begun));
  }

  private Committed withoutChunks(ImportMarker marker) {
    if (imports.contents(marker.id()).isPresent()) {
      throw new LogUnavailableException(
          "Another program swept import %s from the event log while it was under way; let one workspace at a time use the topics %s.*, and repeat"
              .formatted(marker.id(), troubles.cluster().settings().topicPrefix()));
    }
    return new Committed(
        marker, new Contents(Map.of()), new Attempt(marker.id(), Attempt.WITHOUT_CHUNKS));
  }

  @Override
  public LogSnapshot snapshot() {
    requireOpen();
    journal.refresh();
    return new KafkaSnapshot(troubles, topics, consumers, journal.committed(), new Ends());
  }

  @Override
  public long sweep() {
    requireOpen();
    synchronized (committing) {
      journal.refresh();
      decide();
      List<Begun> leftOver = journal.underWay();
      return leftOver.isEmpty() ? 0 : sweep(leftOver);
    }
  }

  // Whoever dies in the midst of a commit leaves it undecided, and nobody sees what came later, nor
  // whether that import is there, until somebody else begins.
  private void decide() {
    long end = journal.end();
    if (journal.position() < end) {
      commits.append(0, number -> Optional.empty());
      journal.await(now -> now.position() >= end);
    }
  }

  private long sweep(List<Begun> leftOver) {
    long batches = scan.batches(leftOver);
    List<Attempt> attempts = leftOver.stream().map(Begun::attempt).toList();
    commits.append(
        attempts.hashCode(),
        number -> Optional.of(JournalEntries.swept(topics.imports(), attempts)));
    journal.await(now -> now.underWay().stream().noneMatch(leftOver::contains));
    attempts.forEach(attempt -> forget(attempt.importId()));
    return batches;
  }

  @Override
  public synchronized void close() {
    if (!closed) {
      closed = true;
      consumers.close();
      Producer<byte[], byte[]> open = producer;
      if (open != null) {
        open.close(CLOSING);
      }
    }
  }

  private void requireOpen() {
    if (closed) {
      throw new IllegalStateException("The event log is closed");
    }
  }
}
