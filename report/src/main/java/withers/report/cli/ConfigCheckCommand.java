package withers.report.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.WorkspaceOption;
import withers.ingest.profile.Profiles;
import withers.reconcile.cli.MatchingFile;
import withers.workspace.MailServer;
import withers.workspace.PasswordFile;
import withers.workspace.Workspace;
import withers.yaml.ConfigException;
import withers.yaml.ConfigProblem;

/** Reads every file of a workspace's configuration, and tells all mistakes. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "Reads withers.yaml and organisations.yaml and, when these have no mistake, the profiles in",
      "sources/ and the files that settings name. All mistakes are told, each with its place; it",
      "ends with 3 then. It changes nothing."
    },
    footerHeading = "%nExample:%n",
    footer = "  withers config check --workspace coast")
public final class ConfigCheckCommand implements Callable<Integer> {
  private final Console console;
  private final List<ConfigProblem> problems = new ArrayList<>();

  @Mixin private WorkspaceOption workspaceOption;

  ConfigCheckCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    attempt(() -> Profiles.read(workspace.paths().sources(), workspace.directory()));
    attempt(() -> MatchingFile.matcher(workspace));
    workspace
        .settings()
        .mail()
        .server()
        .flatMap(MailServer::login)
        .map(login -> workspace.paths().root().resolve(login.passwordFile()))
        .ifPresent(file -> attempt(() -> PasswordFile.read(file)));
    if (!problems.isEmpty()) {
      throw new ConfigException(problems);
    }
    console.print(
        String.format(
            Locale.ROOT,
            "No mistakes: %,d organisations, %,d jobs.",
            workspace.directory().all().size(),
            workspace.settings().schedule().size()));
    return ExitCode.DONE.number();
  }

  private void attempt(Runnable reading) {
    try {
      reading.run();
    } catch (ConfigException mistakes) {
      problems.addAll(mistakes.problems());
    }
  }
}
