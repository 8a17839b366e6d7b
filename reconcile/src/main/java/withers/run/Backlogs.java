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

  /**
   * In the order of the organisations.
   *
   * @param found in the order of the findings
   */
  List<Backlog> of(List<Found> found) {
    Map<OrganisationId, List<Found>> byActor = new TreeMap<>();
    found.stream()
        .filter(one -> isFromTheBeginning(one.key()))
        .forEach(
            one -> byActor.computeIfAbsent(one.key().actor(), a -> new ArrayList<>()).add(one));
    return byActor.entrySet().stream().map(e -> backlog(e.getKey(), e.getValue())).toList();
  }

  private boolean isFromTheBeginning(CaseKey key) {
    if (listing.isAside(key)) {
      return false;
    }
    return before.since(key.actor()).isEmpty() || before.has(moved.getOrDefault(key, key));
  }

  private Backlog backlog(OrganisationId actor, List<Found> followUps) {
    return new Backlog(
        actor,
        Optional.of(actor).flatMap(before::since).orElse(asOf),
        followUps.stream().map(Found::key).toList(),
        waiting(followUps).map(Found::key).toList());
  }

  private Stream<Found> waiting(List<Found> followUps) {
    return listing.cap() == 0
        ? Stream.empty()
        : followUps.stream()
            .filter(Backlogs::canWait)
            .filter(one -> !resting.contains(one.key()))
            .skip(listing.cap());
  }

  private static boolean canWait(Found found) {
    return found.band().compareTo(Band.THIS_WEEK) > 0;
  }
}
