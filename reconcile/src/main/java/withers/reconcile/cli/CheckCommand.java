package withers.reconcile.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import withers.cli.AsOfOption;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.JsonOption;
import withers.cli.Progress;
import withers.cli.WorkspaceOption;
import withers.codec.Streams;
import withers.codec.scorecard.CheckJson;
import withers.codec.scorecard.FrozenScorecard;
import withers.history.Scope;
import withers.id.OrganisationId;
import withers.scorecard.Scorecard;
import withers.scorecard.Target;
import withers.workspace.OwnerOnly;
import withers.workspace.Workspace;
import withers.yaml.Nearest;

/** Tells how many of a group's patients can be reached by their number. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "Tells how many of a group of clinics' patients could be brought home by their number, and"
          + " ends with 8 when that is less than asked for.",
      "Patients of whom it can't be told stand outside; with more of them than allowed it ends with"
          + " 9. The patients counted are kept, without people's details, in scorecards/."
    },
    footerHeading = "%nExample:%n",
    footer = "  withers check --at-least 95 --organisation vale-clinic --organisation hill-clinic")
public final class CheckCommand implements Callable<Integer> {
  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

  private final Console console;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private AsOfOption asOf;
  @Mixin private JsonOption json;

  @Option(
      names = "--at-least",
      required = true,
      paramLabel = "PERCENT",
      description = "How many of a hundred patients are to be reachable, such as 95.")
  private BigDecimal atLeast = HUNDRED;

  @Option(
      names = "--at-most-unknown",
      paramLabel = "PERCENT",
      defaultValue = "10",
      description = "Of how many of a hundred it may not be known. Default: ${DEFAULT-VALUE}.")
  private BigDecimal atMostUnknown = BigDecimal.TEN;

  @Option(
      names = "--organisation",
      paramLabel = "ID",
      description =
          "A clinic of the group, by its id; give one for each. Default: all that send patients.")
  private List<String> organisations = new ArrayList<>();

  @Option(
      names = "--known-by",
      paramLabel = "DATE",
      description =
          "Leave exports dated after this day out, YYYY-MM-DD. Default: none is left out.")
  private @Nullable LocalDate knownBy;

  CheckCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Target target =
        new Target(percent("--at-least", atLeast), percent("--at-most-unknown", atMostUnknown));
    Workspace workspace = workspaceOption.open();
    Scope scope = new Scope(asOf.in(workspace), Optional.ofNullable(knownBy));
    Scorecard card = score(workspace, scope);
    String file = workspace.paths().shown(keep(FrozenScorecard.of(card), workspace));
    print(card, target, workspace, file);
    return judged(target.of(card), card).number();
  }

  private BigDecimal percent(String option, BigDecimal percent) {
    if (percent.signum() < 0 || percent.compareTo(HUNDRED) > 0) {
      throw wrong("Expected %s from 0 to 100, but found %s".formatted(option, percent));
    }
    return percent;
  }

  private ParameterException wrong(String message) {
    return new ParameterException(Objects.requireNonNull(spec).commandLine(), message);
  }

  private Scorecard score(Workspace workspace, Scope scope) {
    List<OrganisationId> clinics =
        organisations.stream().distinct().map(id -> organisation(id, workspace)).toList();
    try (Progress progress = console.progress("check", Streams.CHIPS.partitions())) {
      return new Scorer(workspace).score(clinics, scope, progress);
    }
  }

  private OrganisationId organisation(String text, Workspace workspace) {
    List<OrganisationId> ids =
        workspace.directory().all().stream().map(organisation -> organisation.id()).toList();
    return ids.stream()
        .filter(id -> id.value().equals(text))
        .findFirst()
        .orElseThrow(
            () ->
                wrong(
                    "Expected the id of an organisation in organisations.yaml, but found \"%s\"%s"
                        .formatted(text, suggestion(text, ids))));
  }

  private static String suggestion(String text, List<OrganisationId> ids) {
    return Nearest.to(text, ids.stream().map(OrganisationId::value).toList())
        .map("; did you mean \"%s\"?"::formatted)
        .orElse("");
  }

  private static Path keep(FrozenScorecard frozen, Workspace workspace) {
    try {
      Path folder = OwnerOnly.folder(workspace.paths().scorecards());
      Path file = folder.resolve(frozen.name() + ".jsonl");
      OwnerOnly.replace(file, frozen.text().getBytes(StandardCharsets.UTF_8));
      return file;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void print(Scorecard card, Target target, Workspace workspace, String file) {
    if (json.isJson()) {
      console.print(CheckJson.write(card, target, file));
    } else {
      new ScorecardText(card, target, workspace.directory()).lines().forEach(console::print);
      console.print("");
      console.print("Kept in " + file);
    }
  }

  private ExitCode judged(Target.Outcome outcome, Scorecard card) {
    return switch (outcome) {
      case MET -> ExitCode.DONE;
      case MISSED -> {
        console.say(ScorecardText.missed(card.reachable(), atLeast));
        yield ExitCode.BELOW_TARGET;
      }
      case NOT_KNOWN -> {
        console.say(ScorecardText.notKnown(card.notKnown(), atMostUnknown));
        yield ExitCode.NOT_KNOWN;
      }
    };
  }
}
