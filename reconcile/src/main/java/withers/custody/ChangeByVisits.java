package withers.custody;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.finding.Who;
import withers.matching.Verdict;

/**
 * Tells from visits that an animal changed hands and nobody said so: somebody else comes with it
 * twice, months apart, and its custodian doesn't.
 */
record ChangeByVisits(Trail trail, List<Visit> visits, Cast cast) {

  /** Days that the two visits lie apart at least (our judgement). */
  static final int DAYS_APART = 60;

  /** The next custodian after this one, if visits tell of any. */
  Optional<Tenure> after(Tenure tenure, Versions versions) {
    List<Visit> custodians =
        visits.stream().filter(v -> versions.verdict(v.client()) != Verdict.DIFFERENT).toList();
    return visits.stream()
        .filter(visit -> visit.day().isAfter(tenure.since()))
        .filter(visit -> isCandidate(visit.client(), versions))
        .flatMap(first -> second(first, custodians).map(second -> tenure(first, second)))
        .findFirst();
  }

  private boolean isCandidate(Who client, Versions versions) {
    return !Cast.isOrganisation(client)
        && versions.verdict(client) == Verdict.DIFFERENT
        && trail.holders().noneMatch(holder -> cast.verdict(holder, client).isClose());
  }

  private Stream<Visit> second(Visit first, List<Visit> custodians) {
    return visits.stream()
        .filter(visit -> !visit.day().isBefore(first.day().plusDays(DAYS_APART)))
        .filter(visit -> isSameClient(first, visit))
        .limit(1)
        .filter(visit -> custodians.stream().noneMatch(c -> isBetween(c, first, visit)));
  }

  private boolean isSameClient(Visit first, Visit second) {
    return first.isOfClientId(second)
        || cast.verdict(first.client(), second.client()).isSamePerson();
  }

  private static boolean isBetween(Visit visit, Visit first, Visit second) {
    return !visit.day().isBefore(first.day()) && !visit.day().isAfter(second.day());
  }

  private static Tenure tenure(Visit first, Visit second) {
    return new Tenure(
        first.client(), first.party(), first.statement(), Optional.of(second.statement()));
  }
}
