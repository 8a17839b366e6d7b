package withers.work.kafka;

import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.common.TopicPartition;
import withers.kafka.KafkaSettings;
import withers.kafka.KafkaTroubles;
import withers.kafka.TopicPlan;
import withers.kafka.Topics;

/**
 * The topics of shared work. What is on them is of use while the work goes on, and forgotten after
 * a day by the broker's own clock.
 */
final class WorkTopics {
  private static final Map<String, String> FOR_A_DAY =
      Map.of(
          "cleanup.policy", "delete",
          "retention.ms", "86400000",
          "message.timestamp.type", "LogAppendTime");

  private static final TopicPlan.Advice ADVICE =
      new TopicPlan.Advice(
          "shared work has one for each part: delete the topic while nobody works, and it is made anew",
          "shared work is kept for a day by the broker's clock: set it, or delete the topic while nobody works, and it is made anew");

  private final KafkaSettings settings;
  private final KafkaTroubles troubles;

  WorkTopics(KafkaTroubles troubles) {
    this.settings = troubles.cluster().settings();
    this.troubles = troubles;
  }

  String orders() {
    return settings.topic("work.orders");
  }

  String group() {
    return settings.topic("work");
  }

  TopicPartition questions() {
    return new TopicPartition(settings.topic("work.questions"), 0);
  }

  TopicPartition results() {
    return new TopicPartition(settings.topic("work.results"), 0);
  }

  TopicPartition answers(int part) {
    return new TopicPartition(settings.topic("work.answers"), part);
  }

  /** Makes those that are missing. */
  void prepare(int parts) {
    List<TopicPlan> plans = plans(parts);
    try (Admin admin = troubles.trying(troubles.cluster()::admin)) {
      Topics topics = new Topics(admin, troubles);
      Map<String, Integer> existing = topics.existing(plans.stream().map(TopicPlan::name).toList());
      // Those that are made now need no check, and brokers may not know of them for a moment.
      topics.check(plans.stream().filter(plan -> existing.containsKey(plan.name())).toList());
      topics.make(plans.stream().filter(plan -> !existing.containsKey(plan.name())).toList());
    }
  }

  /** What they are, orders and answers with a partition for each part. */
  List<TopicPlan> plans(int parts) {
    return List.of(
        forADay(orders(), parts),
        forADay(answers(0).topic(), parts),
        forADay(questions().topic(), 1),
        forADay(results().topic(), 1));
  }

  private static TopicPlan forADay(String name, int partitions) {
    return new TopicPlan(name, partitions, FOR_A_DAY, ADVICE);
  }
}
