package withers.reconcile.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.Progress;
import withers.cli.WorkspaceOption;
import withers.codec.Streams;
import withers.matching.Calibration;
import withers.matching.Parameters;
import withers.workspace.Workspace;

/** Estimates the parameters of matching from the workspace's own contacts. */
@Command(
    name = "calibrate",
    mixinStandardHelpOptions = true,
    description = {
      "Estimates from the workspace's own contacts how often details of one person differ, and how often"
          + " strangers' agree, and writes what it finds as a file of parameters.",
      "Nothing uses the file until withers.yaml names it as \"matching\". A bad estimate is told and not written."
    },
    footerHeading = "%nExample:%n",
    footer = "  withers calibrate --workspace coast --output matching.yaml")
public final class CalibrateCommand implements Callable<Integer> {
  private static final int SHOWN_EVERY = 10;

  private final Console console;

  @Mixin private WorkspaceOption workspaceOption;

  @Option(
      names = "--output",
      paramLabel = "FILE",
      defaultValue = "matching.yaml",
      description = "The file to write, within the workspace. Default: ${DEFAULT-VALUE}")
  private Path output = Path.of("matching.yaml");

  CalibrateCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    Calibrator calibrator = new Calibrator(workspace);
    Calibration.Result result = calibrate(calibrator);
    rounds(result.estimate().logLikelihood());
    Optional<Parameters> found = result.parameters();
    if (found.isEmpty()) {
      result.refusals().forEach(console::say);
      console.say("Nothing was written.");
      return ExitCode.ATTENTION.number();
    }
    Path file = calibrator.write(found.orElseThrow(), output);
    console.print("Written: " + file);
    console.print("To use it, state \"matching: %s\" in withers.yaml.".formatted(output));
    return ExitCode.DONE.number();
  }

  private Calibration.Result calibrate(Calibrator calibrator) {
    try (Progress progress = console.progress("calibrate", Streams.CHIPS.partitions())) {
      return calibrator.calibrate(progress);
    }
  }

  private void rounds(List<Double> likelihoods) {
    for (int round = 0; round < likelihoods.size(); round++) {
      if (round % SHOWN_EVERY == 0 || round == likelihoods.size() - 1) {
        console.print(
            String.format(
                Locale.ROOT, "round %4d  log-likelihood %.3f", round + 1, likelihoods.get(round)));
      }
    }
  }
}
