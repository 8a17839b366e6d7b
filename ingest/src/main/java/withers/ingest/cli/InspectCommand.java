package withers.ingest.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.JsonOption;
import withers.codec.imports.InspectJson;
import withers.ingest.Inspected;
import withers.ingest.Inspector;
import withers.ingest.inspect.Answers;
import withers.ingest.pack.PackedFile;
import withers.source.Coverage;
import withers.source.InputRefusedException;
import withers.yaml.Choices;

/** Proposes source profiles for exports that none describes. */
@Command(
    name = "inspect",
    mixinStandardHelpOptions = true,
    description = {
      "Looks at exports that no profile describes and proposes one: kind of records, columns, days,",
      "key, each with its reason. What is not sure is asked, and a profile with an open question is",
      "refused. Nothing is imported. People's details are shown as their shape only."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers inspect harbour-patients-2031-02-28.csv",
      "  withers inspect harbour-patients-2031-02-28.csv --draft sources"
    })
public final class InspectCommand implements Callable<Integer> {

  private static final int FIRST_ROWS = 3;

  private final Console console;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private JsonOption json;

  @Parameters(paramLabel = "FILE", arity = "1..*", description = "Exports to look at.")
  private List<Path> files = List.of();

  @Option(
      names = "--draft",
      paramLabel = "DIR",
      description = "Write each proposal into this folder as a profile. Never overwrites.")
  private @Nullable Path drafts;

  @Option(
      names = "--sheet",
      paramLabel = "NAME",
      description = "The sheet of a spreadsheet. Default: the only one with rows.")
  private @Nullable String sheet;

  @Option(
      names = "--first-rows",
      paramLabel = "N",
      description = "How many rows to show as they would be read. Default: " + FIRST_ROWS + ".")
  private int firstRows = FIRST_ROWS;

  @Option(
      names = "--show-people",
      description = "Show names, phones and addresses in these rows as they are.")
  private boolean open;

  @Option(
      names = "--organisation",
      paramLabel = "ID",
      description = "Answers whose records they are: an id in organisations.yaml.")
  private @Nullable String organisation;

  @Option(
      names = "--extent",
      paramLabel = "full|changes",
      description = "Answers how much is in an export.")
  private @Nullable String extent;

  @Option(
      names = "--reach",
      paramLabel = "whole|account",
      description = "Answers for what the source can speak.")
  private @Nullable String reach;

  InspectCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Inspector.Options options =
        new Inspector.Options(Optional.ofNullable(sheet), answers(), firstRows, open);
    List<Inspected> found = new ArrayList<>();
    List<String> refusals = new ArrayList<>();
    for (Path file : files) {
      inspect(file, options, found, refusals);
    }
    tell(found);
    refusals.forEach(refusal -> console.say("withers: " + refusal));
    boolean drafted = drafts == null || new DraftFiles(drafts, console).write(found);
    if (!refusals.isEmpty() || !drafted) {
      return ExitCode.INPUT_REFUSED.number();
    }
    boolean complete = found.stream().allMatch(Inspected::isComplete);
    return (complete ? ExitCode.DONE : ExitCode.ATTENTION).number();
  }

  private static void inspect(
      Path file, Inspector.Options options, List<Inspected> found, List<String> refusals) {
    try {
      if (!Files.isRegularFile(file)) {
        throw new InputRefusedException(
            "Expected a file, but found none (%s): see that the name is right.".formatted(file));
      }
      for (PackedFile packed : PackedFile.in(file)) {
        found.add(new Inspector().inspect(packed, options));
      }
    } catch (InputRefusedException refused) {
      refusals.add(String.valueOf(refused.getMessage()));
    }
  }

  private Answers answers() {
    Map<String, String> answers = new HashMap<>();
    Optional.ofNullable(organisation).ifPresent(id -> answers.put("organisation", id));
    Optional.ofNullable(extent)
        .map(text -> choice("--extent", Extent.class, text))
        .ifPresent(kind -> answers.put("extent", kind));
    Optional.ofNullable(reach)
        .map(text -> choice("--reach", Coverage.Reach.class, text))
        .ifPresent(kind -> answers.put("coverage", kind));
    return new Answers(answers);
  }

  /** A window needs more than a word, and is left to the profile. */
  private enum Extent {
    FULL,
    CHANGES
  }

  private <E extends Enum<E>> String choice(String option, Class<E> type, String text) {
    try {
      return Choices.name(Choices.read(type, text));
    } catch (IllegalArgumentException refused) {
      throw new ParameterException(
          Objects.requireNonNull(spec).commandLine(), option + ": " + refused.getMessage());
    }
  }

  private void tell(List<Inspected> found) {
    if (json.isJson()) {
      console.print(InspectJson.write(found));
    } else {
      found.forEach(one -> new InspectText(console).tell(one));
    }
  }
}
