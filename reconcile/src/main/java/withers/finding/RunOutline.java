package withers.finding;

import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import withers.cases.CaseKey;
import withers.id.OrganisationId;

/**
 * A run in numbers: all that is asked of earlier runs, and a small part of what they hold.
 *
 * @param findings how many of each band; a band without any may be missing
 * @param opened how many follow-ups the run saw first
 * @param closed how many the data, or a person, closed, by the organisation that had them to do
 */
public record RunOutline(
    String id,
    LocalDate asOf,
    long animals,
    Map<Band, Long> findings,
    long opened,
    SortedMap<OrganisationId, Long> closed) {
  public RunOutline {
    findings = Map.copyOf(findings);
    closed = Collections.unmodifiableSortedMap(new TreeMap<>(closed));
  }

  /** The outline of a run. */
  public static RunOutline of(RunResult run) {
    Map<Band, Long> findings = new EnumMap<>(Band.class);
    run.findings().forEach(one -> findings.merge(one.priority().band(), 1L, Long::sum));
    return of(run, findings);
  }

  /**
   * The outline of a run whose findings were counted.
   *
   * @param findings how many of each band
   */
  public static RunOutline of(RunResult run, Map<Band, Long> findings) {
    SortedMap<OrganisationId, Long> closed = new TreeMap<>();
    run.closed().stream().map(CaseKey::actor).forEach(one -> closed.merge(one, 1L, Long::sum));
    return new RunOutline(
        run.id(), run.asOf(), run.animals(), findings, run.opened().size(), closed);
  }

  /** How many findings there are in one band. */
  public long findings(Band band) {
    return findings.getOrDefault(band, 0L);
  }
}
