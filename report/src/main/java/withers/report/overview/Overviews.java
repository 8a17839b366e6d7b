package withers.report.overview;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import withers.cases.CaseKey;
import withers.finding.Finding;
import withers.finding.Life.Stage;
import withers.finding.NotJudged;
import withers.finding.RunResult;
import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.organisation.Organisation;
import withers.organisation.OrganisationKind;
import withers.report.overview.Overview.Changes;
import withers.report.overview.Overview.Count;
import withers.report.overview.Overview.SourceStatus;
import withers.report.overview.Overview.Unjudged;

/** Makes the overview of a run. Pure. */
public final class Overviews {

  private static final Set<OrganisationKind> SENDERS =
      EnumSet.of(
          OrganisationKind.CLINIC,
          OrganisationKind.SHELTER,
          OrganisationKind.SELLER,
          OrganisationKind.REGISTRY);

  private static final Comparator<Count> BY_KIND =
      Comparator.comparing(Count::kind)
          .thenComparing(Count::band)
          .thenComparing(Count::organisation);

  private static final Comparator<Unjudged> BY_REGISTRY =
      Comparator.comparing(Unjudged::registry).thenComparing(Unjudged::reason);

  private Overviews() {}

  /** The overview of a run. */
  public static Overview of(RunResult run, Background background) {
    List<SourceStatus> sources = new SourceStatuses(run, background).all();
    return new Overview(
        background.network(),
        run.id(),
        run.asOf(),
        run.knownBy(),
        run.animals(),
        counts(run.findings(), new HashSet<>(run.aside())),
        changes(run),
        run.questions().size(),
        unjudged(run.notJudged()),
        sources,
        silent(sources, background.directory()),
        trend(RunFigures.of(run), background.earlier()));
  }

  private static Changes changes(RunResult run) {
    return new Changes(
        run.opened().size(),
        run.stillOpen().size(),
        run.closed().size(),
        run.settled().size(),
        lives(run, Stage.ANSWERED),
        lives(run, Stage.SNOOZED),
        lives(run, Stage.CLOSED));
  }

  private static long lives(RunResult run, Stage stage) {
    return run.lives().stream().filter(life -> life.stage() == stage).count();
  }

  private static List<OrganisationId> silent(List<SourceStatus> sources, Directory directory) {
    Set<OrganisationId> heard =
        sources.stream().map(SourceStatus::organisation).collect(Collectors.toSet());
    return directory.all().stream()
        .filter(one -> SENDERS.contains(one.kind()) && !heard.contains(one.id()))
        .map(Organisation::id)
        .sorted()
        .toList();
  }

  private static List<RunFigures> trend(RunFigures run, List<RunFigures> earlier) {
    List<RunFigures> all = new ArrayList<>(earlier);
    all.add(run);
    return all.subList(Math.max(0, all.size() - Overview.RUNS), all.size());
  }

  private static List<Count> counts(Collection<Finding> findings, Set<CaseKey> aside) {
    return tally(findings, finding -> nothing(finding, !aside.contains(finding.caseKey())))
        .entrySet()
        .stream()
        .map(e -> counted(e.getKey(), e.getValue()))
        .sorted(BY_KIND)
        .toList();
  }

  private static Count nothing(Finding finding, boolean listed) {
    return new Count(finding.kind(), finding.priority().band(), finding.actor(), listed, 0);
  }

  private static Count counted(Count nothing, long followUps) {
    return new Count(
        nothing.kind(), nothing.band(), nothing.organisation(), nothing.listed(), followUps);
  }

  private static List<Unjudged> unjudged(Collection<NotJudged> animals) {
    return tally(new HashSet<>(animals), a -> new Unjudged(a.registry(), a.reason(), 0))
        .entrySet()
        .stream()
        .map(e -> new Unjudged(e.getKey().registry(), e.getKey().reason(), e.getValue()))
        .sorted(BY_REGISTRY)
        .toList();
  }

  private static <T, K> Map<K, Long> tally(Collection<T> things, Function<T, K> key) {
    return things.stream().collect(Collectors.groupingBy(key, Collectors.counting()));
  }
}
