package withers.report.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
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
import withers.cli.JsonOption;
import withers.cli.Operator;
import withers.cli.WorkspaceOption;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.ingest.profile.Profiles;
import withers.ingest.quarantine.QuarantineRemoval;
import withers.log.EventLog;
import withers.reconcile.cli.RunStore;
import withers.report.json.HeldJson;
import withers.report.privacy.Copies;
import withers.report.privacy.Held;
import withers.report.privacy.HeldReader;
import withers.report.privacy.Request;
import withers.workspace.Workspace;

/** Tells what is held on a person. */
@Command(
    name = "about",
    mixinStandardHelpOptions = true,
    description = {
      "Tells everything that is held on a person who asks: details, the records that named them,",
      "follow-ups, mails, and who saw it before. Who asked, and why, is written to the audit.",
      "Look at what you pass on: a namesake's details are not this person's."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers about --by \"privacy officer\" --reason \"asked for a copy\"",
      "  withers about --person ask.yaml --by coordinator --reason \"asked for a copy\" --json"
    })
public final class AboutCommand implements Callable<Integer> {
  private final Console console;
  private final Operator operator;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private PersonOption person;
  @Mixin private WhoAndWhy said;
  @Mixin private JsonOption json;

  @Option(
      names = "--only",
      paramLabel = "REFERENCE",
      split = ",",
      description =
          "Tell of these contacts only. Default: you are asked, or those judged the same person.")
  private List<String> only = List.of();

  AboutCommand(Console console, Operator operator) {
    this.console = console;
    this.operator = operator;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    SettleText text = new SettleText(workspace, this::refusal);
    String by = text.role(said.role());
    String reason = text.reason(said.reason());
    Set<ContactRef> named = Choice.named(only, this::refusal);
    Contact wanted = person.read().orElseThrow(this::nobodyToAsk);
    if (wanted.isNobody()) {
      throw refusal("Expected a name, a phone, an e-mail or an address, but found none");
    }
    PeopleFound people = new PeopleFound(workspace);
    Request found = people.find(wanted);
    people.write(
        "about",
        new Disclosed(
            workspace.today(), by, reason, "about", found.references().stream().sorted().toList()));
    return tell(chosen(found, named), workspace);
  }

  private Request chosen(Request found, Set<ContactRef> named) {
    Choice choice = new Choice(found, this::refusal);
    if (!named.isEmpty()) {
      return found.of(choice.requireFound(named));
    }
    Request likely = found.likely();
    return likely.equals(found) ? found : asked(found, likely, choice);
  }

  /** Who might be somebody else is told of only when a person says so. */
  private Request asked(Request found, Request likely, Choice choice) {
    new RequestText(found).lines().forEach(console::say);
    console.say(
        "Which of them are the person? Numbers with blanks between, or \"all\"; those that are judged the same person if you say nothing.");
    return operator
        .answer()
        .map(answer -> choice.read(answer.strip()))
        .filter(references -> !references.isEmpty())
        .map(found::of)
        .orElse(likely);
  }

  private int tell(Request request, Workspace workspace) {
    Held held = held(request, workspace);
    if (json.isJson()) {
      console.print(HeldJson.of(held));
    } else {
      HeldText.lines(held).forEach(console::print);
    }
    boolean isNothing = held.contacts().isEmpty() && held.files().isEmpty();
    return (isNothing ? ExitCode.ATTENTION : ExitCode.DONE).number();
  }

  private static Held held(Request request, Workspace workspace) {
    try (EventLog log = workspace.openLog()) {
      return new HeldReader(
              log.snapshot(), new RunStore(workspace.paths().runs()).latest(), workspace.paths())
          .read(request, files(request, workspace));
    }
  }

  private static List<Path> files(Request request, Workspace workspace) {
    Profiles profiles = Profiles.read(workspace.paths().sources(), workspace.directory());
    Copies copies = new Copies(workspace.paths(), profiles, request.traces());
    Stream<Path> quarantined = copies.quarantined().stream().map(QuarantineRemoval.Removed::file);
    return Stream.of(copies.exports().stream(), quarantined, copies.left().stream())
        .flatMap(all -> all)
        .distinct()
        .sorted()
        .toList();
  }

  private ParameterException nobodyToAsk() {
    return refusal(
        "Expected somebody at the terminal, but found nobody to ask: give --person FILE");
  }

  private ParameterException refusal(String message) {
    return new ParameterException(Objects.requireNonNull(spec).commandLine(), message);
  }
}
