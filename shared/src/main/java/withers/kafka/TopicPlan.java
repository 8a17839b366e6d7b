package withers.kafka;

import java.util.Map;
import java.util.TreeMap;

/**
 * What a topic must be.
 *
 * @param name whole, with prefix
 * @param settings of the topic, in Kafka's own keys, that it is made with and must have
 */
public record TopicPlan(String name, int partitions, Map<String, String> settings) {

  public TopicPlan {
    settings = Map.copyOf(settings);
  }

  /** A topic whose records are never deleted. */
  public static TopicPlan forEver(String name, int partitions) {
    return new TopicPlan(
        name,
        partitions,
        Map.of("cleanup.policy", "delete", "retention.ms", "-1", "retention.bytes", "-1"));
  }

  /** The settings in a fixed order, for messages. */
  Map<String, String> sortedSettings() {
    return new TreeMap<>(settings);
  }
}
