package withers.reconcile.cli;

import java.util.List;
import java.util.Objects;
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
import withers.chip.Candidate;
import withers.chip.ChipNumber;
import withers.chip.ChipNumberReader;
import withers.chip.Reading;
import withers.cli.Account;
import withers.cli.AsOfOption;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.JsonOption;
import withers.cli.Typed;
import withers.cli.WorkspaceOption;
import withers.codec.trace.TraceJson;
import withers.history.Periods;
import withers.history.Scope;
import withers.trace.Trace;
import withers.trace.TraceText;
import withers.trace.Tracer;
import withers.workspace.Workspace;

/** Looks one number up. */
@Command(
    name = "trace",
    mixinStandardHelpOptions = true,
    description = {
      "Tells what the records say about one chip number, and which organisation to call next.",
      "Any usual spelling will do. Private people are named to case workers alone (--people), and that",
      "is written to the audit."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers trace --workspace coast 999 010 900000101",
      "  withers trace 999010900000101 --people --by \"night desk\" --reason \"found on the road\""
    })
public final class TraceCommand implements Callable<Integer> {
  private final Console console;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private AsOfOption asOf;
  @Mixin private JsonOption json;

  @Parameters(arity = "1..*", paramLabel = "NUMBER", description = "The chip number.")
  private List<String> number = List.of();

  @Option(
      names = "--people",
      description = {
        "Also show the private people whom the records name. For accounts of the system that",
        "withers.yaml names under case-workers; needs --by and --reason."
      })
  private boolean isWithPeople;

  @Option(names = "--by", paramLabel = "ROLE", description = "In which role. Never a name.")
  private String role = "";

  @Option(
      names = "--reason",
      paramLabel = "TEXT",
      description = "Why, in a sentence. No phones, no addresses, no names of people.")
  private String reason = "";

  private final Account account;

  TraceCommand(Console console, Account account) {
    this.console = console;
    this.account = account;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    List<ChipNumber> numbers = numbers(workspace);
    requireRight(workspace);
    try (Stores stores = Stores.open(workspace)) {
      Tracer tracer = tracer(workspace, stores);
      List<Trace> traces = numbers.stream().map(tracer::trace).toList();
      List<Trace> known = traces.stream().filter(Trace::isKnown).toList();
      (known.isEmpty() ? traces.subList(0, 1) : known).forEach(trace -> print(trace, tracer));
      if (isWithPeople) {
        PeopleShown people = new PeopleShown(workspace, stores, role, reason);
        known.forEach(trace -> people.show(trace, tracer.wording(), console));
      }
      return (known.isEmpty() ? ExitCode.ATTENTION : ExitCode.DONE).number();
    }
  }

  /** Nothing is shown before it is certain who asks, in which role and why. */
  private void requireRight(Workspace workspace) {
    if (!isWithPeople) {
      return;
    }
    if (!workspace.settings().caseWorkers().contains(account.name())) {
      throw refusal(
          "Expected an account that case-workers names in withers.yaml, but found \"%s\": nobody was shown. Call the organisation that trace names"
              .formatted(account.name()));
    }
    Typed typed = new Typed(this::refusal);
    role = typed.role(role);
    reason = typed.reason(reason);
    if (json.isJson()) {
      throw refusal("Expected --people without --json, but found both: people are shown to people");
    }
  }

  private ParameterException refusal(String message) {
    return new ParameterException(Objects.requireNonNull(spec).commandLine(), message);
  }

  private Tracer tracer(Workspace workspace, Stores stores) {
    return new Tracer(
        stores.log().snapshot(),
        Scope.asOf(asOf.in(workspace)),
        workspace.directory(),
        workspace.settings().coordinator(),
        PeopleOf.workspace(workspace, stores::findAll),
        Periods.of(workspace.settings(), workspace.directory()));
  }

  private void print(Trace trace, Tracer tracer) {
    if (json.isJson()) {
      console.print(TraceJson.write(trace, tracer.wording()));
    } else {
      TraceText.of(trace, tracer.wording()).forEach(console::print);
    }
  }

  private static String joined(List<ChipNumber> numbers) {
    return numbers.stream().map(ChipNumber::display).collect(Collectors.joining(", "));
  }

  /** The number, or all that a damaged one may have been. */
  private List<ChipNumber> numbers(Workspace workspace) {
    String text = String.join(" ", number);
    Reading reading = new ChipNumberReader(workspace.settings().acceptsTestNumbers()).read(text);
    if (reading instanceof Reading.Accepted accepted) {
      return List.of(accepted.number());
    }
    if (reading instanceof Reading.Tentative tentative) {
      console.say("This may also be something else: " + tentative.why());
      return List.of(tentative.number());
    }
    if (reading instanceof Reading.Guessed guessed) {
      List<ChipNumber> candidates = guessed.candidates().stream().map(Candidate::number).toList();
      console.say("This can't be read without guessing. It may be: " + joined(candidates));
      return candidates;
    }
    throw new ParameterException(
        Objects.requireNonNull(spec).commandLine(),
        reading instanceof Reading.Refused refused
            ? refused.message()
            : "Expected a chip number with all its digits, but found only a part of one, or none");
  }
}
