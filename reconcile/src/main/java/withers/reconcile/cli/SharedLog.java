package withers.reconcile.cli;

import withers.kafka.KafkaCluster;
import withers.workspace.Workspace;
import withers.workspace.WorkspacePaths;
import withers.yaml.ConfigException;
import withers.yaml.ConfigProblem;
import withers.yaml.Place;

/** The log that several machines read. */
final class SharedLog {
  private SharedLog() {}

  /**
   * The cluster that a workspace's log is on.
   *
   * @throws ConfigException when it is a file of one machine
   */
  static KafkaCluster of(Workspace workspace) {
    return workspace
        .kafka()
        .orElseThrow(
            () ->
                new ConfigException(
                    new ConfigProblem(
                        Place.of(WorkspacePaths.SETTINGS),
                        "log",
                        "Expected the event log on Kafka, but found the embedded one, which no other machine reads",
                        "run reconcile without --workers, or move the log: docs/kafka.md says how")));
  }
}
