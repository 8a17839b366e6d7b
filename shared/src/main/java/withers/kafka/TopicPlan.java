package withers.kafka;

import java.util.Map;
import java.util.TreeMap;

/**
 * What a topic must be.
 *
 * @param name whole, with prefix
 * @param settings of the topic, in Kafka's own keys, that it is made with and must have
 * @param advice for who has made it otherwise
 */
public record TopicPlan(String name, int partitions, Map<String, String> settings, Advice advice) {

  /**
   * What follows from a topic that is otherwise, and what to do: the ends of two sentences.
   *
   * @param partitions when it has another count of partitions
   * @param settings when it has other settings
   */
  public record Advice(String partitions, String settings) {}

  private static final Advice FOR_EVER =
      new Advice(
          "partitions are never added or merged: choose another log.kafka.topic-prefix, and take over what is there with \"withers log copy\"",
          "with other settings Kafka would delete what must stay: set it, then repeat");

  public TopicPlan {
    settings = Map.copyOf(settings);
  }

  /** A topic whose records are never deleted. */
  public static TopicPlan forEver(String name, int partitions) {
    return new TopicPlan(
        name,
        partitions,
        Map.of("cleanup.policy", "delete", "retention.ms", "-1", "retention.bytes", "-1"),
        FOR_EVER);
  }

  /** The settings in a fixed order, for messages. */
  Map<String, String> sortedSettings() {
    return new TreeMap<>(settings);
  }
}
