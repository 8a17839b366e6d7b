package withers.workspace;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;
import withers.kafka.KafkaSettings;
import withers.log.EventLog;
import withers.yaml.ConfigException;
import withers.yaml.ConfigProblem;
import withers.yaml.Fields;
import withers.yaml.Place;
import withers.yaml.Problems;
import withers.yaml.YamlFiles;
import withers.yaml.YamlMap;

/** A log that the settings don't name: the one before, or another prefix. */
public final class OtherLog {

  /** What names the log in the workspace's folder. */
  public static final String EMBEDDED = "embedded";

  private OtherLog() {}

  /**
   * Opens a log of this workspace other than the one that its settings name.
   *
   * @param name {@link #EMBEDDED}, or a YAML file with the key {@code log} as in the settings
   * @throws ConfigException when it is the same log, or the file has mistakes
   */
  public static EventLog open(Workspace workspace, String name) {
    Optional<KafkaSettings> other = name.equals(EMBEDDED) ? Optional.empty() : read(Path.of(name));
    if (other.equals(workspace.settings().kafka())) {
      throw refused(
          name,
          "Expected another log than the workspace's own, but found the same",
          "name the log to copy from; withers.yaml names the one to copy to");
    }
    if (other.isEmpty() && !Files.exists(workspace.paths().eventLog())) {
      throw refused(
          workspace.paths().eventLog().toString(),
          "Expected an event log, but found none",
          "name the workspace whose log it is");
    }
    return workspace.stores(other).log();
  }

  private static Optional<KafkaSettings> read(Path file) {
    Problems problems = new Problems();
    Optional<YamlMap> map = YamlFiles.read(file, file.toString(), problems);
    Optional<KafkaSettings> read =
        map.flatMap(
                found ->
                    Fields.read(
                        found,
                        problems,
                        fields ->
                            fields
                                .map("log", KafkaSettingsReader::log)
                                .flatMap(Function.identity())))
            .flatMap(Function.identity());
    problems.throwIfAny();
    return read;
  }

  private static ConfigException refused(String place, String message, String advice) {
    return new ConfigException(new ConfigProblem(Place.of(place), "", message, advice));
  }
}
