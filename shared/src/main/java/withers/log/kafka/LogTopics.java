package withers.log.kafka;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.kafka.common.TopicPartition;
import withers.codec.Streams;
import withers.kafka.KafkaSettings;
import withers.kafka.KafkaTroubles;
import withers.kafka.TopicPlan;
import withers.kafka.Topics;
import withers.log.Contents;
import withers.log.LogStream;

/** The log's topics: one for each stream, and one for the markers. */
final class LogTopics {
  private final KafkaSettings settings;
  private final KafkaTroubles troubles;
  private final TopicPlan imports;
  private final List<TopicPlan> streams;

  LogTopics(KafkaTroubles troubles) {
    this.settings = troubles.cluster().settings();
    this.troubles = troubles;
    this.imports = TopicPlan.forEver(settings.topic(Streams.IMPORTS), 1);
    this.streams =
        Streams.all().stream()
            .map(stream -> TopicPlan.forEver(settings.topic(stream.name()), stream.partitions()))
            .toList();
  }

  String imports() {
    return imports.name();
  }

  /**
   * A topic that is there is checked; the topic of imports is made if no other is there.
   *
   * @return the topics of streams that are missing
   */
  Set<String> prepareImports(Topics topics) {
    Map<String, Integer> existing =
        topics.existing(
            Stream.concat(Stream.of(imports), streams.stream()).map(TopicPlan::name).toList());
    if (existing.isEmpty()) {
      topics.make(List.of(imports));
    } else if (!existing.containsKey(imports.name())) {
      throw missing(imports.name(), "others of its prefix are there");
    }
    topics.check(
        Stream.concat(Stream.of(imports), streams.stream())
            .filter(plan -> existing.containsKey(plan.name()))
            .toList());
    return streams.stream()
        .map(TopicPlan::name)
        .filter(name -> !existing.containsKey(name))
        .collect(Collectors.toSet());
  }

  /** Makes topics of streams that nothing was written to yet. */
  void makeMissing(Topics topics, Set<String> names, List<Committed> imported) {
    Set<String> used =
        imported.stream()
            .flatMap(one -> one.contents().counts().keySet().stream())
            .map(place -> settings.topic(place.stream()))
            .collect(Collectors.toSet());
    names.stream()
        .filter(used::contains)
        .sorted()
        .findFirst()
        .ifPresent(
            name -> {
              throw missing(name, "imports have brought events to it");
            });
    topics.make(streams.stream().filter(plan -> names.contains(plan.name())).toList());
  }

  private RuntimeException missing(String name, String why) {
    return troubles.unusable(
        "Expected the topic %s, but it is missing although %s; restore it, or choose another log.kafka.topic-prefix"
            .formatted(name, why));
  }

  TopicPartition partition(Contents.Place place) {
    return new TopicPartition(settings.topic(place.stream()), place.partition());
  }

  String topic(LogStream<?> stream) {
    boolean same =
        Streams.all().stream()
            .anyMatch(
                known ->
                    known.name().equals(stream.name())
                        && known.partitions() == stream.partitions());
    if (!same) {
      throw troubles.unusable(
          "Expected a stream of this program, but found %s with %d partitions"
              .formatted(stream.name(), stream.partitions()));
    }
    return settings.topic(stream.name());
  }

  /** All partitions of a stream. */
  Set<TopicPartition> partitions(LogStream<?> stream) {
    return IntStream.range(0, stream.partitions())
        .mapToObj(partition -> new TopicPartition(settings.topic(stream.name()), partition))
        .collect(Collectors.toSet());
  }

  /** Every place of the log, and the partition that it is. */
  Map<Contents.Place, TopicPartition> all() {
    Map<Contents.Place, TopicPartition> all = new HashMap<>();
    for (LogStream<?> stream : Streams.all()) {
      for (int partition = 0; partition < stream.partitions(); partition++) {
        Contents.Place place = new Contents.Place(stream.name(), partition);
        all.put(place, partition(place));
      }
    }
    return all;
  }
}
