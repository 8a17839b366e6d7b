package withers.kafka;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.apache.kafka.common.Uuid;
import withers.kafka.broker.BrokerPlan;
import withers.kafka.broker.BrokerPlan.Member;
import withers.kafka.broker.LocalBroker;

/** A broker that clients lose when a test wants them to, while it goes on as it was. */
public final class BrokerBehindAWire implements AutoCloseable {
  private final Wire wire;
  private final LocalBroker broker;

  private BrokerBehindAWire(Wire wire, LocalBroker broker) {
    this.wire = wire;
    this.broker = broker;
  }

  /** Starts one, and waits until it answers. */
  public static BrokerBehindAWire start(Path folder) {
    Wire wire = new Wire();
    Member member = Member.onFreePorts(1);
    wire.leadTo(member.port());
    int own = Member.onFreePorts(1).port();
    String listeners =
        "PLAINTEXT://127.0.0.1:%s,OWN://127.0.0.1:%d,CONTROLLER://127.0.0.1:{controller}";
    Map<String, String> extra =
        Map.of(
            "listeners",
            listeners.formatted("{port}", own),
            "advertised.listeners",
            listeners.formatted(wire.port(), own),
            "listener.security.protocol.map",
            "PLAINTEXT:PLAINTEXT,OWN:PLAINTEXT,CONTROLLER:PLAINTEXT",
            "inter.broker.listener.name",
            "OWN");
    BrokerPlan plan =
        new BrokerPlan(
            folder, TestJars.all(), Uuid.randomUuid(), member, List.of(member), extra, List.of());
    return new BrokerBehindAWire(wire, LocalBroker.start(plan));
  }

  /** Where clients find it. */
  public String address() {
    return "127.0.0.1:" + wire.port();
  }

  /** How many bytes clients have sent it so far. */
  public long received() {
    return wire.sent();
  }

  /** Lets clients lose it when they have sent so many bytes more. */
  public void loseAfter(long bytes) {
    wire.cutAfter(bytes);
  }

  /** Whether clients have lost it. */
  public boolean isLost() {
    return wire.isCut();
  }

  /** Lets clients find it again. */
  public void comesBack() {
    wire.mend();
  }

  @Override
  public void close() throws IOException {
    wire.close();
    broker.close();
  }
}
