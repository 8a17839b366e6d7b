package withers.kafka;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.common.Uuid;
import withers.kafka.broker.BrokerPlan;
import withers.kafka.broker.BrokerPlan.Member;
import withers.kafka.broker.LocalBroker;
import withers.log.EventLog;
import withers.log.kafka.KafkaEventLog;

/**
 * A cluster of three brokers, each with all partitions; two have to have what is written. They miss
 * one of them sooner than usual (2 seconds instead of 9), so that tests need not wait so long.
 */
public final class ThreeBrokers implements AutoCloseable {
  public static final int COUNT = 3;

  private static final Map<String, String> IMPATIENT =
      Map.of("broker.session.timeout.ms", "2000", "broker.heartbeat.interval.ms", "300");

  private final List<LocalBroker> brokers;

  private ThreeBrokers(List<LocalBroker> brokers) {
    this.brokers = List.copyOf(brokers);
  }

  /** Starts them, and waits until all three answer. */
  public static ThreeBrokers start(Path folder) {
    List<Member> members = IntStream.rangeClosed(1, COUNT).mapToObj(Member::onFreePorts).toList();
    Uuid cluster = Uuid.randomUuid();
    List<LocalBroker> brokers = new ArrayList<>();
    for (Member member : members) {
      Path own = folder.resolve("broker-" + member.node());
      BrokerPlan plan =
          new BrokerPlan(own, TestJars.all(), cluster, member, members, IMPATIENT, List.of());
      brokers.add(LocalBroker.prepared(plan, Map.of()));
    }
    ThreeBrokers started = new ThreeBrokers(brokers);
    started.launchMissing();
    started.awaitReady();
    return started;
  }

  /** Where clients find them. */
  public String addresses() {
    return brokers.stream().map(LocalBroker::address).collect(Collectors.joining(","));
  }

  /** Ends one at once, as a power cut does. */
  public void kill(int broker) {
    brokers.get(broker).kill();
  }

  /** Starts those again that were ended. */
  public void launchMissing() {
    brokers.stream().filter(broker -> !broker.isRunning()).forEach(LocalBroker::launch);
  }

  /** Waits until each knows all three. */
  public void awaitReady() {
    brokers.forEach(LocalBroker::awaitReady);
  }

  /** The log with topics of this prefix, as a program has it that waits so long for a broker. */
  public EventLog log(String prefix, Duration patience) {
    return log(addresses(), prefix, patience);
  }

  /** The same for a program that knows the addresses alone. */
  public static EventLog log(String addresses, String prefix, Duration patience) {
    KafkaSettings settings =
        new KafkaSettings(
            List.of(addresses.split(",")),
            prefix,
            Optional.of(COUNT),
            KafkaSettings.Security.NONE,
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    return KafkaEventLog.open(new KafkaCluster(settings, Path.of(""), file -> "", patience));
  }

  /** Deletes the topics of a prefix: each is one more to recover for a broker that was killed. */
  public void drop(String prefix) throws ExecutionException, InterruptedException {
    try (Admin admin = brokers.get(0).admin()) {
      List<String> ours =
          admin.listTopics().names().get().stream()
              .filter(name -> name.startsWith(prefix + "."))
              .toList();
      admin.deleteTopics(ours).all().get();
    }
  }

  @Override
  public void close() {
    brokers.forEach(LocalBroker::kill); // what they keep goes with the test
  }
}
