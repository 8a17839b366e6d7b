package withers.log.kafka;

import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.apache.kafka.common.TopicPartition;
import withers.kafka.KafkaTroubles;
import withers.log.Contents;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.LogStream;

/**
 * The markers as they were. The chunks that they make visible stood on the log before them, and
 * never change. Each replay has a consumer of its own.
 *
 * @param ends where partitions ended when one of their stream was first read
 */
record KafkaSnapshot(
    KafkaTroubles troubles,
    LogTopics topics,
    Consumers consumers,
    List<Committed> imports,
    Ends ends)
    implements LogSnapshot {

  KafkaSnapshot {
    imports = List.copyOf(imports);
  }

  @Override
  public List<ImportMarker> markers() {
    return imports.stream().map(Committed::marker).toList();
  }

  @Override
  public <E> void replay(
      LogStream<E> stream,
      int partition,
      Predicate<ImportMarker> which,
      Handler<? super E> handler) {
    stream.requirePartition(partition);
    TopicPartition source = new TopicPartition(topics.topic(stream), partition);
    Contents.Place place = new Contents.Place(stream.name(), partition);
    Replay<E> replay =
        new Replay<>(
            stream,
            place,
            imports.stream().filter(one -> which.test(one.marker())).toList(),
            handler);
    if (!replay.isDone()) {
      consumers.with(
          consumer -> {
            long end = ends.of(source, () -> consumer.endOffsets(topics.partitions(stream)));
            new Scan(troubles, consumer).run(Map.of(source, 0L), Map.of(source, end), replay::on);
            return replay;
          });
      replay.requireAll();
    }
  }
}
