package withers.report.overview;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.cases.CaseKey;
import withers.finding.Band;
import withers.finding.RunResult;
import withers.id.OrganisationId;

/**
 * A run in a few figures, to be compared with others.
 *
 * @param followUps how many there are, by band, in the order of the bands
 * @param opened how many this run saw first
 * @param closed how many new records, or a person, settled since the run before, by the
 *     organisation that had them to do, in the order of their ids
 */
public record RunFigures(
    String run,
    LocalDate asOf,
    long animals,
    List<Long> followUps,
    long opened,
    List<Closed> closed) {
  public RunFigures {
    followUps = List.copyOf(followUps);
    closed = List.copyOf(closed);
  }

  /** Follow-ups of one organisation that are settled. */
  public record Closed(OrganisationId organisation, long followUps) {}

  /** The figures of a run. */
  public static RunFigures of(RunResult run) {
    return new RunFigures(
        run.id(),
        run.asOf(),
        run.animals(),
        Stream.of(Band.values()).map(band -> count(run, band)).toList(),
        run.opened().size(),
        closed(run));
  }

  private static long count(RunResult run, Band band) {
    return run.findings().stream().filter(one -> one.priority().band() == band).count();
  }

  private static List<Closed> closed(RunResult run) {
    return run.closed().stream()
        .collect(Collectors.groupingBy(CaseKey::actor, TreeMap::new, Collectors.counting()))
        .entrySet()
        .stream()
        .map(one -> new Closed(one.getKey(), one.getValue()))
        .toList();
  }

  /** How many there are in one band. */
  public long followUps(Band band) {
    return followUps.get(band.ordinal());
  }

  /** How many of all organisations were settled. */
  public long closedByAll() {
    return closed.stream().mapToLong(Closed::followUps).sum();
  }

  /** How many of one organisation were settled. */
  public long closedBy(OrganisationId organisation) {
    return closed.stream()
        .filter(one -> one.organisation().equals(organisation))
        .mapToLong(Closed::followUps)
        .sum();
  }
}
