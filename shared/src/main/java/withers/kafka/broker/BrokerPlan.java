package withers.kafka.broker;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.kafka.common.Uuid;

/**
 * How a broker is set up: always its own controller, on this machine's own address.
 *
 * @param folder where its files go
 * @param jars the class path that holds the broker
 * @param cluster the id that its cluster's storages are formatted with
 * @param self which of the members it is
 * @param members all brokers of the cluster
 * @param extra properties besides or instead of the usual ones; {@code {port}} and {@code
 *     {controller}} stand for its ports
 * @param formatting more arguments of the tool that formats the storage, such as first users
 */
public record BrokerPlan(
    Path folder,
    String jars,
    Uuid cluster,
    Member self,
    List<Member> members,
    Map<String, String> extra,
    List<String> formatting) {

  private static final String USUAL =
      """
      process.roles=broker,controller
      node.id={node}
      controller.quorum.bootstrap.servers={controllers}
      listeners=PLAINTEXT://127.0.0.1:{port},CONTROLLER://127.0.0.1:{controller}
      advertised.listeners=PLAINTEXT://127.0.0.1:{port},CONTROLLER://127.0.0.1:{controller}
      listener.security.protocol.map=PLAINTEXT:PLAINTEXT,CONTROLLER:PLAINTEXT
      inter.broker.listener.name=PLAINTEXT
      controller.listener.names=CONTROLLER
      log.dirs={folder}/data
      auto.create.topics.enable=false
      default.replication.factor={replicas}
      min.insync.replicas={in-step}
      offsets.topic.replication.factor={replicas}
      offsets.topic.num.partitions=1
      transaction.state.log.replication.factor={replicas}
      transaction.state.log.min.isr={in-step}
      transaction.state.log.num.partitions=1
      share.coordinator.state.topic.replication.factor={replicas}
      share.coordinator.state.topic.min.isr={in-step}
      group.initial.rebalance.delay.ms=0
      log.index.size.max.bytes=65536
      file.delete.delay.ms=100
      """;

  /**
   * A broker of a cluster.
   *
   * @param node its number, from 1
   * @param port where clients find it
   * @param controller where other controllers find it
   * @param storage the id of its folder of data
   */
  public record Member(int node, int port, int controller, Uuid storage) {

    /** One on ports that are free now. */
    public static Member onFreePorts(int node) {
      return new Member(node, FreePort.any(), FreePort.any(), Uuid.randomUuid());
    }

    private String voter() {
      return "%d@127.0.0.1:%d:%s".formatted(node, controller, storage);
    }
  }

  public BrokerPlan {
    members = List.copyOf(members);
    extra = Map.copyOf(extra);
    formatting = List.copyOf(formatting);
  }

  /** A broker that is alone, in a folder of its own. */
  public static BrokerPlan alone(Path folder, String jars) {
    Member only = Member.onFreePorts(1);
    return new BrokerPlan(
        folder, jars, Uuid.randomUuid(), only, List.of(only), Map.of(), List.of());
  }

  /** The same with other properties and arguments of the formatting. */
  public BrokerPlan with(Map<String, String> otherExtra, List<String> otherFormatting) {
    return new BrokerPlan(folder, jars, cluster, self, members, otherExtra, otherFormatting);
  }

  /** The broker's own properties. Of several members, a majority has to have what is written. */
  String properties() {
    String more =
        extra.entrySet().stream()
            .map(one -> one.getKey() + "=" + one.getValue() + "\n")
            .collect(Collectors.joining());
    return (USUAL + more)
        .replace("{node}", String.valueOf(self.node()))
        .replace("{port}", String.valueOf(self.port()))
        .replace("{controller}", String.valueOf(self.controller()))
        .replace("{controllers}", controllers())
        .replace("{replicas}", String.valueOf(members.size()))
        .replace("{in-step}", String.valueOf(members.size() / 2 + 1))
        .replace("{folder}", folder.toString().replace('\\', '/'));
  }

  private String controllers() {
    return members.stream()
        .map(member -> "127.0.0.1:" + member.controller())
        .collect(Collectors.joining(","));
  }

  /** The arguments that have the storage formatted. */
  List<String> formatArguments(Path properties) {
    String voters = members.stream().map(Member::voter).collect(Collectors.joining(","));
    List<String> arguments = new ArrayList<>(List.of("kafka.tools.StorageTool", "format"));
    arguments.addAll(List.of("--initial-controllers", voters, "-t", cluster.toString()));
    arguments.addAll(List.of("-c", properties.toString()));
    arguments.addAll(formatting);
    return arguments;
  }
}
