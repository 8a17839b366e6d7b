package withers.report.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.WorkspaceOption;
import withers.delivery.Delivery;
import withers.delivery.Delivery.Step;
import withers.report.send.DeliveryBook;
import withers.report.send.Pause;
import withers.workspace.Workspace;

/** Tells what became of mails, and is told what became of those that nobody was sure of. */
@Command(
    name = "deliveries",
    mixinStandardHelpOptions = true,
    description = {
      "Lists what became of each mail: the run, the recipient, the day, and the server's answer.",
      "With --arrived or --lost it writes down what you found out about the recipient's mails of"
          + " which nobody knew. A lost one can be sent again."
    },
    footerHeading = "%nExample:%n",
    footer = "  withers deliveries --workspace coast --arrived harbour-vets")
public final class DeliveriesCommand implements Callable<Integer> {
  private final Console console;

  @Spec private CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;

  @ArgGroup(exclusive = true)
  private @Nullable FoundOut foundOut;

  /** What a person found out. */
  static final class FoundOut {
    @Option(names = "--arrived", paramLabel = "ORGANISATION", description = "It has the mail.")
    private @Nullable String arrived;

    @Option(
        names = "--lost",
        paramLabel = "ORGANISATION",
        description = "It does not have the mail.")
    private @Nullable String lost;
  }

  DeliveriesCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    Mailing mailing = new Mailing(workspace, console, Pause::real, false);
    if (foundOut != null) {
      write(foundOut, workspace, mailing);
    } else {
      mailing.withBook(book -> book.mailings().all()).forEach(step -> console.print(line(step)));
    }
    ExitCode left = mailing.leave();
    return left.number();
  }

  private void write(FoundOut found, Workspace workspace, Mailing mailing) {
    Step step = found.arrived != null ? Step.ARRIVED : Step.LOST;
    String recipient = String.valueOf(found.arrived != null ? found.arrived : found.lost);
    List<Delivery> written =
        workspace.whileLocked(
            "deliveries", () -> mailing.withBook(book -> write(step, recipient, book)));
    written.forEach(one -> console.print(line(one)));
  }

  private List<Delivery> write(Step step, String recipient, DeliveryBook book) {
    book.closeUnanswered();
    List<Delivery> unsure =
        book.mailings().unsure().stream()
            .filter(one -> one.recipient().value().equals(recipient))
            .map(one -> one.then(step, book.today(), "the operator found out"))
            .toList();
    if (unsure.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(),
          "Expected an organisation with a mail that nobody is sure of, but found \"%s\": withers deliveries lists all"
              .formatted(recipient));
    }
    unsure.forEach(book::write);
    return unsure;
  }

  private static String line(Delivery step) {
    return "%s  %s  %s: %s"
        .formatted(step.on(), step.run(), step.recipient(), MailingText.words(step));
  }
}
