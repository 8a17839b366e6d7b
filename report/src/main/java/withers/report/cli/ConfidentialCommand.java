package withers.report.cli;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import withers.audit.Confidential;
import withers.chip.ChipNumber;
import withers.chip.ChipNumberReader;
import withers.chip.Reading;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.WorkspaceOption;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.report.privacy.Request;
import withers.workspace.Workspace;

/** Marks animals as confidential, or lifts that. */
@Command(
    name = "confidential",
    mixinStandardHelpOptions = true,
    description = {
      "Nothing is told any more of an animal, or of every animal that records about a person name: no",
      "list, mail, sheet, overview or scorecard shows it, and a look-up says to call the coordinator.",
      "Lists and ready mails of all runs are deleted, and those of the latest are made again.",
      "Without a number and without --person it shows what is marked."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers confidential 999010900000101 --by coordinator --reason \"dispute\"",
      "  withers confidential --person ask.yaml --by \"case worker\" --reason \"shelter from abuse\"",
      "  withers confidential 999010900000101 --lift --by coordinator --reason \"settled in court\""
    })
public final class ConfidentialCommand implements Callable<Integer> {
  private final Console console;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private WhoAndWhyIfDone said;

  @Parameters(arity = "0..*", paramLabel = "NUMBER", description = "Chip numbers, one word each.")
  private List<String> numbers = List.of();

  @Option(
      names = "--person",
      paramLabel = "FILE",
      description = {
        "A YAML file with what is known of a person: name, phones, emails, address, postcode, town.",
        "Delete it afterwards."
      })
  private java.nio.file.@Nullable Path file;

  @Option(
      names = "--only",
      paramLabel = "REFERENCE",
      split = ",",
      description = "Of those that --person finds, these. Default: those judged the same person.")
  private List<String> only = List.of();

  @Option(names = "--lift", description = "Lift the mark of these.")
  private boolean isLifted;

  ConfidentialCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    Silencing silencing = new Silencing(workspace);
    if (numbers.isEmpty() && file == null) {
      silencing.lines().forEach(console::print);
      return ExitCode.DONE.number();
    }
    SettleText text = new SettleText(workspace, this::refusal);
    Confidential mark =
        mark(workspace, silencing, text.role(said.role()), text.reason(said.reason()));
    if (mark.references().isEmpty() && mark.numbers().isEmpty()) {
      console.say("Nobody like that is held here: nothing was marked.");
      return ExitCode.ATTENTION.number();
    }
    Optional<String> anew = silencing.write(mark);
    console.print(Silencing.told(mark));
    anew.ifPresent(run -> console.print("The lists of run %s were made again.".formatted(run)));
    return ExitCode.DONE.number();
  }

  private Confidential mark(Workspace workspace, Silencing silencing, String by, String why) {
    Optional<Request> person = Optional.ofNullable(file).map(path -> person(workspace, path));
    Set<ContactRef> references = person.map(Request::references).orElse(Set.of());
    return new Confidential(
        workspace.today(),
        by,
        why,
        references.stream().sorted().toList(),
        person.map(Request::records).orElse(List.of()),
        silencing.animals(read(workspace), references),
        isLifted);
  }

  private Request person(Workspace workspace, java.nio.file.Path path) {
    Contact wanted = PersonOption.read(path);
    if (wanted.isNobody()) {
      throw refusal("Expected a name, a phone, an e-mail or an address, but found none");
    }
    Request found = new PeopleFound(workspace).find(wanted);
    Set<ContactRef> named = Choice.named(only, this::refusal);
    return named.isEmpty()
        ? found.likely()
        : found.of(new Choice(found, this::refusal).requireFound(named));
  }

  private Set<ChipNumber> read(Workspace workspace) {
    ChipNumberReader reader = new ChipNumberReader(workspace.settings().acceptsTestNumbers());
    return numbers.stream().map(text -> number(reader.read(text))).collect(Collectors.toSet());
  }

  private ChipNumber number(Reading reading) {
    if (reading instanceof Reading.Accepted accepted) {
      return accepted.number();
    }
    throw refusal(
        "Expected chip numbers with all their digits, but found something else: nothing was marked");
  }

  private ParameterException refusal(String message) {
    return new ParameterException(Objects.requireNonNull(spec).commandLine(), message);
  }
}
