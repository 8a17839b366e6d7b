package withers.report.cli;

import java.util.Optional;
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
import withers.cli.JsonOption;
import withers.cli.Operator;
import withers.cli.WorkspaceOption;
import withers.report.publish.Published;
import withers.report.send.Pause;
import withers.workspace.Workspace;

/** Makes lists, overview and mail of a run. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    description = {
      "Makes each organisation's list (HTML, XLSX, CSV), the coordinator's overview, and a mail for"
          + " each recipient in the outbox.",
      "Nothing is sent without --send. Making a run's lists again replaces those that it made before."
    },
    footerHeading = "%nExample:%n",
    footer = {"  withers report --workspace coast", "  withers report --workspace coast --send"})
public final class ReportCommand implements Callable<Integer> {
  private final Console console;
  private final Operator operator;
  private final Pause pause;

  @Spec private CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private JsonOption json;

  @Option(
      names = "--run",
      paramLabel = "ID",
      description = "The run: a folder below runs/. Default: the latest one.")
  private @Nullable String run;

  @Option(
      names = "--send",
      description = {
        "Send the mails that are due, each once for a run and recipient: after showing who would get"
            + " what, and asking."
      })
  private boolean isToBeSent;

  @Option(names = "--yes", description = "With --send: don't ask. For schedules.")
  private boolean isAgreed;

  ReportCommand(Console console, Operator operator, Pause pause) {
    this.console = console;
    this.operator = operator;
    this.pause = pause;
  }

  @Override
  public Integer call() {
    if (isAgreed && !isToBeSent) {
      throw new ParameterException(
          spec.commandLine(), "Expected --send with --yes, but found none");
    }
    Workspace workspace = workspaceOption.open();
    return isToBeSent ? send(workspace) : report(workspace);
  }

  private int send(Workspace workspace) {
    Mailing mailing = new Mailing(workspace, console, pause, json.isJson());
    Mailing.Offer offer = mailing.offer(Optional.ofNullable(run));
    ExitCode told = tell(offer.published(), workspace);
    mailing.show(offer);
    ExitCode sent = isAgreedTo(offer) ? mailing.send(offer) : mailing.leave();
    return (sent == ExitCode.DONE ? told : sent).number();
  }

  private boolean isAgreedTo(Mailing.Offer offer) {
    if (offer.due().isEmpty() || isAgreed) {
      return !offer.due().isEmpty();
    }
    console.say("Type yes to send %s.".formatted(Mailing.mails(offer.due().size())));
    return operator
        .answer()
        .map(this::isYes)
        .orElseThrow(
            () ->
                new ParameterException(
                    spec.commandLine(),
                    "Expected somebody to say yes, but found no terminal: nothing was sent. Add"
                        + " --yes to send without being asked"));
  }

  private boolean isYes(String answer) {
    boolean isYes = answer.strip().equals("yes");
    if (!isYes) {
      console.say("Nothing was sent.");
    }
    return isYes;
  }

  private int report(Workspace workspace) {
    Reporter reporter = new Reporter(workspace);
    Published published =
        workspace.whileLocked(
            "report", () -> reporter.publish(reporter.run(Optional.ofNullable(run))));
    return tell(published, workspace).number();
  }

  private ExitCode tell(Published published, Workspace workspace) {
    PublishedText text = new PublishedText(console, workspace);
    if (json.isJson()) {
      console.print(PublishedJson.of(published, workspace.paths()));
      return text.warn(published);
    }
    return text.tell(published);
  }
}
