package withers.report.cli;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import withers.audit.Disclosed;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.Operator;
import withers.cli.WorkspaceOption;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.report.privacy.Request;
import withers.workspace.Workspace;

/** Forgets a person. */
@Command(
    name = "forget",
    mixinStandardHelpOptions = true,
    description = {
      "Deletes what is held on a person, and keeps it out: next month's exports may still name them.",
      "Shows whoever may be meant and asks which of them are. What stays on the log names nobody.",
      "docs/privacy.md says what can't be reached: mails that were sent, and backups."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers forget --by \"privacy officer\" --reason \"asked by letter\"",
      "  withers forget --person ask.yaml --by coordinator --reason \"asked by letter\" \\",
      "      --yes 01:00112233445566778899aabbccddeeff"
    })
public final class ForgetCommand implements Callable<Integer> {
  private final Console console;
  private final Operator operator;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private PersonOption person;
  @Mixin private WhoAndWhy said;

  @Option(
      names = "--yes",
      paramLabel = "REFERENCE",
      split = ",",
      description = "Forget these without asking: references as they were shown before.")
  private List<String> agreed = List.of();

  @Option(
      names = "--inbox",
      description = "Also delete exports in the inbox that hold the person and are on the log.")
  private boolean withInbox;

  ForgetCommand(Console console, Operator operator) {
    this.console = console;
    this.operator = operator;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    SettleText text = new SettleText(workspace, this::refusal);
    Erasing erasing =
        new Erasing(workspace, text.role(said.role()), text.reason(said.reason()), withInbox);
    Set<ContactRef> named = Choice.named(agreed, this::refusal);
    Contact wanted = person.read().orElseThrow(this::nobodyToAsk);
    if (wanted.isNobody()) {
      throw refusal("Expected a name, a phone, an e-mail or an address, but found none");
    }
    Request found = new PeopleFound(workspace).find(wanted);
    Optional<Set<ContactRef>> chosen = chosen(found, named, erasing);
    if (chosen.isEmpty()) {
      console.say("Nothing was forgotten.");
      return ExitCode.DONE.number();
    }
    return erase(found.of(chosen.get()), erasing);
  }

  private int erase(Request request, Erasing erasing) {
    if (request.matches().isEmpty() && erasing.isNothingLeft(request)) {
      console.say(
          "Nobody like that is held here: not in the contact vault, not in quarantine, lists or mails.");
      return ExitCode.ATTENTION.number();
    }
    Erasing.Done done = erasing.erase(request);
    new ErasedText(console, erasing.workspace()).tell(done);
    return (done.needsAttention() ? ExitCode.ATTENTION : ExitCode.DONE).number();
  }

  /** Empty when the person at the terminal says no. */
  private Optional<Set<ContactRef>> chosen(Request found, Set<ContactRef> named, Erasing erasing) {
    if (found.matches().isEmpty() && named.isEmpty()) {
      return Optional.of(Set.of());
    }
    if (!named.isEmpty()) {
      return Optional.of(new Choice(found, this::refusal).requireFound(named));
    }
    show(found, erasing);
    console.say(
        "Which of them are the person? Numbers with blanks between, or \"all\"; nothing to leave it. What you name is deleted for good.");
    String answer = operator.answer().orElseThrow(this::nobodyToAsk).strip();
    return Optional.of(new Choice(found, this::refusal).read(answer))
        .filter(chosen -> !chosen.isEmpty());
  }

  private void show(Request found, Erasing erasing) {
    new PeopleFound(erasing.workspace())
        .write(
            "forget",
            new Disclosed(
                erasing.workspace().today(),
                erasing.by(),
                erasing.reason(),
                "forget",
                found.references().stream().sorted().toList()));
    new RequestText(found).lines().forEach(console::print);
  }

  private ParameterException nobodyToAsk() {
    return refusal(
        "Expected somebody at the terminal, but found nobody to ask: give --person FILE, and --yes with the references to be forgotten; nothing was forgotten");
  }

  private ParameterException refusal(String message) {
    return new ParameterException(Objects.requireNonNull(spec).commandLine(), message);
  }
}
