package withers.report.overview;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import withers.finding.Band;
import withers.finding.RunOutline;
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
    return of(RunOutline.of(run));
  }

  /** The figures of a run of which no more is known. */
  public static RunFigures of(RunOutline run) {
    return new RunFigures(
        run.id(),
        run.asOf(),
        run.animals(),
        Stream.of(Band.values()).map(run::findings).toList(),
        run.opened(),
        run.closed().entrySet().stream()
            .map(one -> new Closed(one.getKey(), one.getValue()))
            .toList());
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
