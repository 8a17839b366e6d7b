package withers.reconcile.cli;

import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.WorkspaceOption;
import withers.kafka.KafkaCluster;
import withers.log.EventLog;
import withers.workspace.Workspace;

/** Does parts of runs that another machine orders. */
@Command(
    name = "work",
    mixinStandardHelpOptions = true,
    description = {
      "Stays up, and judges partitions for \"withers reconcile --workers\", on this machine or another.",
      "It needs withers.yaml, with the log on Kafka, and organisations.yaml, as they are there, and neither"
          + " exports nor contacts: what people's details tell is asked of the run. The signal TERM ends it."
    },
    footerHeading = "%nExample:%n",
    footer = "  withers work --workspace coast")
public final class WorkCommand implements Callable<Integer> {
  private final Console console;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;

  @Option(
      names = "--threads",
      paramLabel = "N",
      description = "How many partitions to judge at a time. Default: one for each processor.")
  private int threads = Runtime.getRuntime().availableProcessors();

  @Option(
      names = "--until-idle",
      paramLabel = "SECONDS",
      defaultValue = "0",
      description = "End when there was no work for so long. Default: never.")
  private int untilIdle;

  WorkCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    if (threads < 1 || untilIdle < 0) {
      throw new ParameterException(
          Objects.requireNonNull(spec).commandLine(),
          "Expected --threads from 1 and --until-idle from 0, but found %d and %d"
              .formatted(threads, untilIdle));
    }
    Workspace workspace = workspaceOption.open();
    KafkaCluster cluster = SharedLog.of(workspace);
    try (EventLog log = workspace.openLog()) {
      Workshop shop = new Workshop(workspace, log, console::say);
      Runtime.getRuntime().addShutdownHook(new Thread(shop::close, "stop"));
      shop.open(cluster, threads, untilIdle);
      return (shop.isRefused() ? ExitCode.CONFIGURATION : ExitCode.DONE).number();
    }
  }
}
