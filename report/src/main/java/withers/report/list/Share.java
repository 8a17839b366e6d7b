package withers.report.list;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.IntStream;
import withers.cases.CaseKey;
import withers.finding.Finding;
import withers.finding.OpenQuestion;
import withers.finding.RunResult;
import withers.id.OrganisationId;
import withers.packed.LazyList;

/**
 * What of a run concerns one organisation, each in the order of the run. Runs are parted once: a
 * network may have thousands of members.
 */
record Share(
    List<Finding> findings,
    List<OpenQuestion> questions,
    List<CaseKey> opened,
    List<CaseKey> stillOpen,
    List<CaseKey> closed,
    List<CaseKey> settled) {

  private Share(List<Finding> findings) {
    this(
        findings,
        new ArrayList<>(),
        new ArrayList<>(),
        new ArrayList<>(),
        new ArrayList<>(),
        new ArrayList<>());
  }

  /** Everybody's, by id. */
  static Map<OrganisationId, Share> of(RunResult run) {
    Map<OrganisationId, Share> shares = new TreeMap<>();
    findings(run).forEach((id, findings) -> shares.put(id, new Share(findings)));
    part(run.questions(), OpenQuestion::asked, Share::questions, shares);
    part(run.opened(), CaseKey::actor, Share::opened, shares);
    part(run.stillOpen(), CaseKey::actor, Share::stillOpen, shares);
    part(run.closed(), CaseKey::actor, Share::closed, shares);
    part(run.settled(), CaseKey::actor, Share::settled, shares);
    return shares;
  }

  /** Which they are: made when they are asked for, if the run's are. */
  private static Map<OrganisationId, List<Finding>> findings(RunResult run) {
    Map<OrganisationId, IntStream.Builder> places = new HashMap<>();
    int at = 0;
    for (Finding finding : run.findings()) {
      places.computeIfAbsent(finding.actor(), id -> IntStream.builder()).add(at++);
    }
    Map<OrganisationId, List<Finding>> findings = new HashMap<>();
    places.forEach((id, some) -> findings.put(id, LazyList.at(some.build(), run.findings())));
    return findings;
  }

  private static <T> void part(
      Collection<T> all,
      Function<T, OrganisationId> whose,
      Function<Share, List<T>> which,
      Map<OrganisationId, Share> shares) {
    all.forEach(
        one ->
            which
                .apply(shares.computeIfAbsent(whose.apply(one), id -> new Share(List.of())))
                .add(one));
  }
}
