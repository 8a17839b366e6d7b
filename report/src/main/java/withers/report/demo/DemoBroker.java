package withers.report.demo;

import java.nio.file.Path;
import withers.kafka.broker.BrokerPlan;
import withers.kafka.broker.LocalBroker;
import withers.log.LogUnavailableException;

/** A broker that is there for one demo, and ends with it, also when the demo is interrupted. */
public final class DemoBroker implements AutoCloseable {
  private final LocalBroker broker;
  private final Thread atExit;

  private DemoBroker(LocalBroker broker) {
    this.broker = broker;
    this.atExit = new Thread(broker::kill, "demo-broker-end");
  }

  /**
   * Starts one on free ports of this machine's own address, and waits until it answers.
   *
   * @param jars its class path
   * @param folder for its files
   * @throws LogUnavailableException when it does not start
   */
  public static DemoBroker start(String jars, Path folder) {
    try {
      DemoBroker started = new DemoBroker(LocalBroker.start(BrokerPlan.alone(folder, jars)));
      Runtime.getRuntime().addShutdownHook(started.atExit);
      return started;
    } catch (IllegalStateException e) {
      LogUnavailableException told =
          new LogUnavailableException(
              "Expected the demo's Kafka broker to start, but it didn't; what it said is in %s; name one that runs with --bootstrap HOST:PORT"
                  .formatted(folder));
      told.initCause(e);
      throw told;
    }
  }

  /** Where clients find it. */
  public String address() {
    return broker.address();
  }

  @Override
  public void close() {
    Runtime.getRuntime().removeShutdownHook(atExit);
    broker.close();
  }
}
