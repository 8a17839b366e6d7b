package withers.reconcile.cli;

import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import withers.work.Crew;
import withers.work.kafka.KafkaCrew;
import withers.workspace.Workspace;

/** Says whether a run is shared with workers. A mixin of the commands that judge. */
public final class WorkersOption {

  @Spec(Spec.Target.MIXEE)
  private @Nullable CommandSpec spec;

  @Option(
      names = "--workers",
      description = {
        "Share the work with those who run \"withers work\"; the log has to be on Kafka.",
        "What they leave, or nobody takes, is done here."
      })
  private boolean shared;

  @Option(
      names = "--patience",
      paramLabel = "SECONDS",
      defaultValue = "20",
      description =
          "With --workers: how long to wait for the first one. Default: ${DEFAULT-VALUE}.")
  private int patience;

  /**
   * Who is asked to work on one run; nobody without the option.
   *
   * @param threads how many questions of theirs are answered at a time
   * @throws ParameterException when the patience is less than none
   * @throws withers.yaml.ConfigException when the log is not on Kafka
   */
  public Optional<Crew> crew(Workspace workspace, int threads) {
    if (patience < 0) {
      throw new ParameterException(
          Objects.requireNonNull(spec).commandLine(),
          "Expected --patience from 0, but found " + patience);
    }
    return shared ? Optional.of(ordered(workspace, threads)) : Optional.empty();
  }

  private Crew ordered(Workspace workspace, int threads) {
    return new KafkaCrew(
        SharedLog.of(workspace),
        new KafkaCrew.Ordered(
            UUID.randomUUID().toString(),
            RulesStamp.of(workspace),
            threads,
            Duration.ofSeconds(patience)));
  }
}
