package withers.kafka;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.Config;
import org.apache.kafka.clients.admin.ConfigEntry;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.admin.TopicDescription;
import org.apache.kafka.common.KafkaFuture;
import org.apache.kafka.common.config.ConfigResource;
import org.apache.kafka.common.errors.TopicExistsException;
import org.apache.kafka.common.errors.UnknownTopicOrPartitionException;

/** Makes and checks topics. */
public final class Topics {
  private final Admin admin;
  private final KafkaTroubles troubles;

  public Topics(Admin admin, KafkaTroubles troubles) {
    this.admin = admin;
    this.troubles = troubles;
  }

  /** How many partitions each of these topics has, of those that exist. */
  public Map<String, Integer> existing(Collection<String> names) {
    return troubles.trying(
        () -> {
          Map<String, Integer> found = new HashMap<>();
          for (Map.Entry<String, KafkaFuture<TopicDescription>> one :
              admin.describeTopics(names).topicNameValues().entrySet()) {
            described(one.getValue())
                .ifPresent(topic -> found.put(one.getKey(), topic.partitions().size()));
          }
          return found;
        });
  }

  private static Optional<TopicDescription> described(KafkaFuture<TopicDescription> future)
      throws ExecutionException, InterruptedException {
    try {
      return Optional.of(future.get());
    } catch (ExecutionException e) {
      if (e.getCause() instanceof UnknownTopicOrPartitionException) {
        return Optional.empty();
      }
      throw e;
    }
  }

  /** Makes topics; one that another program makes at the same time is left as it is. */
  public void make(List<TopicPlan> plans) {
    Optional<Short> replication =
        troubles.cluster().settings().replication().map(Integer::shortValue);
    List<NewTopic> topics =
        plans.stream()
            .map(
                plan ->
                    new NewTopic(plan.name(), Optional.of(plan.partitions()), replication)
                        .configs(plan.settings()))
            .toList();
    troubles.trying(
        () -> {
          for (KafkaFuture<Void> one : admin.createTopics(topics).values().values()) {
            made(one);
          }
          return topics;
        });
  }

  private static void made(KafkaFuture<Void> future)
      throws ExecutionException, InterruptedException {
    try {
      future.get();
    } catch (ExecutionException e) {
      if (!(e.getCause() instanceof TopicExistsException)) {
        throw e;
      }
    }
  }

  /** Checks that topics, which exist, are as planned. */
  public void check(List<TopicPlan> plans) {
    Map<String, Integer> partitions = existing(plans.stream().map(TopicPlan::name).toList());
    for (TopicPlan plan : plans) {
      checkPartitions(plan, partitions.getOrDefault(plan.name(), plan.partitions()));
    }
    Map<ConfigResource, Config> configs =
        troubles.trying(
            () -> admin.describeConfigs(plans.stream().map(Topics::resource).toList()).all().get());
    for (TopicPlan plan : plans) {
      checkSettings(plan, Objects.requireNonNull(configs.get(resource(plan))));
    }
  }

  private void checkPartitions(TopicPlan plan, int found) {
    if (found != plan.partitions()) {
      throw troubles.unusable(
          "Expected %d partitions of the topic %s, but found %d; %s"
              .formatted(plan.partitions(), plan.name(), found, plan.advice().partitions()));
    }
  }

  private void checkSettings(TopicPlan plan, Config config) {
    for (Map.Entry<String, String> wanted : plan.sortedSettings().entrySet()) {
      ConfigEntry entry = config.get(wanted.getKey());
      if (entry == null || !wanted.getValue().equals(entry.value())) {
        throw troubles.unusable(
            "Expected the topic %s to have %s=%s, but found %s; %s"
                .formatted(
                    plan.name(),
                    wanted.getKey(),
                    wanted.getValue(),
                    entry == null ? "none" : entry.value(),
                    plan.advice().settings()));
      }
    }
  }

  private static ConfigResource resource(TopicPlan plan) {
    return new ConfigResource(ConfigResource.Type.TOPIC, plan.name());
  }
}
