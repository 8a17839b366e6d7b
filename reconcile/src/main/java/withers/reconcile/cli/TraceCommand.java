package withers.reconcile.cli;

import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import withers.chip.Candidate;
import withers.chip.ChipNumber;
import withers.chip.ChipNumberReader;
import withers.chip.Reading;
import withers.cli.AsOfOption;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.JsonOption;
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
      "Any usual spelling will do. Private people are never named."
    },
    footerHeading = "%nExample:%n",
    footer = "  withers trace --workspace coast 999 010 900000101")
public final class TraceCommand implements Callable<Integer> {
  private final Console console;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private AsOfOption asOf;
  @Mixin private JsonOption json;

  @Parameters(arity = "1..*", paramLabel = "NUMBER", description = "The chip number.")
  private List<String> number = List.of();

  TraceCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    List<ChipNumber> numbers = numbers(workspace);
    try (Stores stores = Stores.open(workspace)) {
      Tracer tracer = tracer(workspace, stores);
      List<Trace> traces = numbers.stream().map(tracer::trace).toList();
      List<Trace> known = traces.stream().filter(Trace::isKnown).toList();
      (known.isEmpty() ? traces.subList(0, 1) : known).forEach(trace -> print(trace, tracer));
      return (known.isEmpty() ? ExitCode.ATTENTION : ExitCode.DONE).number();
    }
  }

  private Tracer tracer(Workspace workspace, Stores stores) {
    return new Tracer(
        stores.log().snapshot(),
        Scope.asOf(asOf.in(workspace)),
        workspace.directory(),
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
