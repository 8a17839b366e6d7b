package withers.report.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import withers.audit.Disclosed;
import withers.cases.CaseKey;
import withers.cases.Reference;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.WorkspaceOption;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.explain.Explainer;
import withers.explain.Explanation;
import withers.explain.PastCases;
import withers.finding.RunResult;
import withers.history.Periods;
import withers.id.OrganisationId;
import withers.log.EventLog;
import withers.log.LogSnapshot;
import withers.organisation.Organisation;
import withers.reconcile.cli.PeopleOf;
import withers.reconcile.cli.RunStore;
import withers.report.text.OneLine;
import withers.workspace.Workspace;
import withers.yaml.Nearest;

/** Tells why a follow-up is there. */
@Command(
    name = "explain",
    mixinStandardHelpOptions = true,
    description = {
      "Tells why a follow-up is there: the rule's sentence, what it rests on, how the trail and the",
      "contacts are read, its priority, what would close it and what hides it. It is told of the",
      "latest run. No private person is named, but for --for: its own clients."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers explain SDAM-YRC7",
      "  withers explain 999010900000101 contact-behind --for garrowness-shelter"
    })
public final class ExplainCommand implements Callable<Integer> {

  private final Console console;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;

  @Mixin private CaseParameter wantedCase;

  @Option(
      names = "--for",
      paramLabel = "ORGANISATION",
      description = "Name this organisation's own clients: its id.")
  private @Nullable String reader;

  @Option(
      names = "--run",
      paramLabel = "ID",
      description = "The run: a folder below runs/. Default: the latest one.")
  private @Nullable String run;

  ExplainCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    Optional<OrganisationId> forWhom = Optional.ofNullable(reader).map(id -> known(id, workspace));
    RunResult wanted = new Reporter(workspace).run(Optional.ofNullable(run));
    try (EventLog log = workspace.openLog();
        ContactVault vault = workspace.openVault()) {
      LogSnapshot snapshot = log.snapshot();
      List<CaseKey> cases = cases(wanted, workspace, snapshot);
      if (cases.isEmpty()) {
        console.say(
            "Run %s tells of no such follow-up: give the reference as a list shows it, or the number and the kind. \"withers trace NUMBER\" tells what the records say."
                .formatted(wanted.id()));
        return ExitCode.ATTENTION.number();
      }
      Set<ContactRef> named = new TreeSet<>();
      Explainer explainer = explainer(wanted, workspace, snapshot, vault, forWhom, named::add);
      List<List<String>> told = cases.stream().map(key -> lines(key, explainer)).toList();
      disclose(named, forWhom, workspace);
      told.forEach(lines -> lines.forEach(console::print));
      tellBasis(wanted, workspace);
    }
    return ExitCode.DONE.number();
  }

  /** What the run tells of, else what the log knows of: lists of long ago lie about, too. */
  private List<CaseKey> cases(RunResult wanted, Workspace workspace, LogSnapshot log) {
    List<CaseKey> told = new NamedCases(wanted, workspace).find(wantedCase.words());
    return told.isEmpty()
        ? new NamedCases(wanted, PastCases.upTo(wanted.asOf(), log), workspace)
            .find(wantedCase.words())
        : told;
  }

  private OrganisationId known(String id, Workspace workspace) {
    List<String> ids =
        workspace.directory().all().stream().map(Organisation::id).map(one -> one.value()).toList();
    if (ids.contains(id)) {
      return new OrganisationId(id);
    }
    String fix = Nearest.to(id, ids).map("did you mean \"%s\"?"::formatted).orElse("see that file");
    throw new ParameterException(
        Objects.requireNonNull(spec).commandLine(),
        "Expected --for with the id of an organisation in organisations.yaml, but found \"%s\": %s"
            .formatted(id, fix));
  }

  private static Explainer explainer(
      RunResult run,
      Workspace workspace,
      LogSnapshot log,
      ContactVault vault,
      Optional<OrganisationId> reader,
      Consumer<ContactRef> named) {
    return new Explainer(
        run,
        log,
        workspace.directory(),
        PeopleOf.workspace(workspace, vault::findAll),
        Periods.of(workspace.settings(), workspace.directory()),
        reader,
        reference -> {
          named.accept(reference);
          return vault.find(reference).map(Contact::fullName).filter(name -> !name.isEmpty());
        });
  }

  /** Whom it names to somebody is written down before it is said. */
  private static void disclose(
      Set<ContactRef> named, Optional<OrganisationId> reader, Workspace workspace) {
    reader.ifPresent(
        id ->
            new PeopleFound(workspace)
                .write(
                    "explain",
                    new Disclosed(
                        workspace.today(),
                        "operator",
                        "named to %s, whose clients they are".formatted(id),
                        "explain",
                        List.copyOf(named))));
  }

  private void tellBasis(RunResult run, Workspace workspace) {
    new RunStore(workspace.paths().runs())
        .basis(run.id())
        .ifPresent(
            basis -> {
              console.print("Run %s was made with:".formatted(run.id()));
              basis.lines().forEach(line -> console.print("  " + OneLine.of(line)));
            });
  }

  private static List<String> lines(CaseKey key, Explainer explainer) {
    if (explainer.isSilent(key)) {
      return List.of("Nothing is told of this follow-up: ask the coordinator.");
    }
    List<String> lines = new ArrayList<>();
    Explanation told = explainer.explain(key);
    lines.add("Follow-up %s: %s".formatted(Reference.of(key), OneLine.of(told.title())));
    told.parts().stream()
        .filter(part -> !part.lines().isEmpty())
        .forEach(
            part -> {
              lines.add(part.heading() + ":");
              part.lines().forEach(line -> lines.add("  " + OneLine.of(line)));
            });
    return lines;
  }
}
