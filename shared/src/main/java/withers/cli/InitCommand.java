package withers.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import withers.workspace.Member;
import withers.workspace.NewWorkspace;
import withers.workspace.Workspace;
import withers.workspace.WorkspacePaths;

/** Makes a workspace. */
@Command(
    name = "init",
    mixinStandardHelpOptions = true,
    description = {
      "Makes a workspace in a new or empty folder: settings, directory of organisations, folders.",
      "On a terminal it asks, unless an option says something; Enter takes what it proposes.",
      "In an existing workspace it adds what is missing. It never overwrites."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers init coast",
      "  withers init coast --network \"Coast Network\" --zone Europe/Lisbon --phone-region PT",
      "  withers init coast --clinic \"Harbour Clinic <lists@harbour.example.org>\" --schedule monthly"
    })
public final class InitCommand implements Callable<Integer> {
  private final Console console;
  private final Clock clock;
  private final Operator operator;

  @Spec private @Nullable CommandSpec spec;

  @Parameters(paramLabel = "DIR", description = "The folder.")
  private Path folder = Path.of("");

  @Mixin private InitOptions options;

  @Option(
      names = {"-y", "--yes"},
      description = "Ask nothing: what no option says is as it would be proposed.")
  private boolean isSilent;

  InitCommand(Console console, Clock clock, Operator operator) {
    this.console = console;
    this.clock = clock;
    this.operator = operator;
  }

  @Override
  public Integer call() {
    NewWorkspace answers = answers();
    List<String> made = Workspace.create(folder, answers);
    Workspace.open(folder, clock);
    tell(made, answers, folder.toAbsolutePath().normalize());
    return ExitCode.DONE.number();
  }

  private NewWorkspace answers() {
    try {
      NewWorkspace told = options.answers(folderName());
      return isToAsk() ? questions().ask(told) : told;
    } catch (IllegalArgumentException refused) {
      throw new ParameterException(command().commandLine(), String.valueOf(refused.getMessage()));
    }
  }

  private boolean isToAsk() {
    boolean saysNothing = command().commandLine().getParseResult().matchedOptions().isEmpty();
    return saysNothing
        && !isSilent
        && operator.isThere()
        && !Files.exists(new WorkspacePaths(folder).settings());
  }

  private InitQuestions questions() {
    console.say("Enter takes what stands in brackets. Everything can be changed later.");
    return new InitQuestions(new Conversation(console, operator));
  }

  private CommandSpec command() {
    return Objects.requireNonNull(spec);
  }

  private void tell(List<String> made, NewWorkspace answers, Path where) {
    if (made.isEmpty()) {
      console.print("Nothing was missing in " + where);
      return;
    }
    console.print("Made in " + where + ":");
    made.forEach(file -> console.print("  " + file));
    if (answers.members().isEmpty()) {
      console.say(
          "Next: name the organisations in organisations.yaml and describe each source in sources/.");
    } else {
      console.say("Next: have an export of each looked at, and answer what is asked in its draft:");
      answers.members().forEach(this::tellWhatNext);
    }
  }

  private void tellWhatNext(Member member) {
    console.say(
        "  withers inspect EXPORT --organisation %s --draft %s"
            .formatted(member.id(), folder.resolve("sources")));
  }

  private String folderName() {
    return String.valueOf(folder.toAbsolutePath().normalize().getFileName());
  }
}
