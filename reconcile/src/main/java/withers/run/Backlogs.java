package withers.run;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import withers.cases.CaseKey;
import withers.finding.Backlog;
import withers.finding.Band;
import withers.finding.Finding;
import withers.id.OrganisationId;

/**
 * Finds out what is left of the follow-ups that organisations began with.
 *
 * @param asOf the day that the run judges
 * @param before what earlier runs opened
 * @param moved former keys of follow-ups that go on under another, by the new key
 * @param resting what is on no list for now, since somebody answered or put it off
 * @param listing what lists show
 */
record Backlogs(
    LocalDate asOf,
    Beginnings before,
    Map<CaseKey, CaseKey> moved,
    Set<CaseKey> resting,
    Listing listing) {

  /** In the order of the organisations. */
  List<Backlog> of(List<Finding> findings) {
    Map<OrganisationId, List<Finding>> byActor = new TreeMap<>();
    findings.stream()
        .filter(this::isFromTheBeginning)
        .forEach(f -> byActor.computeIfAbsent(f.actor(), actor -> new ArrayList<>()).add(f));
    return byActor.entrySet().stream().map(e -> backlog(e.getKey(), e.getValue())).toList();
  }

  private boolean isFromTheBeginning(Finding finding) {
    CaseKey key = finding.caseKey();
    if (listing.isAside(key)) {
      return false;
    }
    return before.since(key.actor()).isEmpty() || before.has(moved.getOrDefault(key, key));
  }

  private Backlog backlog(OrganisationId actor, List<Finding> findings) {
    return new Backlog(
        actor,
        Optional.of(actor).flatMap(before::since).orElse(asOf),
        findings.stream().map(Finding::caseKey).toList(),
        waiting(findings).map(Finding::caseKey).toList());
  }

  private Stream<Finding> waiting(List<Finding> findings) {
    return listing.cap() == 0
        ? Stream.empty()
        : findings.stream()
            .filter(Backlogs::canWait)
            .filter(finding -> !resting.contains(finding.caseKey()))
            .skip(listing.cap());
  }

  private static boolean canWait(Finding finding) {
    return finding.priority().band().compareTo(Band.THIS_WEEK) > 0;
  }
}
