package withers.report.overview;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import withers.finding.Band;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.id.OrganisationId;
import withers.id.SourceId;

/**
 * A run in figures. Names organisations, never a person, a number or a record.
 *
 * @param animals how many animals the records tell of
 * @param counts follow-ups by kind, band and organisation, none of them zero, in that order
 * @param questions animals of which nobody can tell from the records whether the registered contact
 *     is the keeper, and of which nothing else is to be said; no follow-ups
 * @param notJudged animals that could not be judged, by registry and reason
 * @param sources what was imported, in the order of the sources' ids
 * @param silent clinics, shelters, sellers and registries of which nothing was ever imported, in
 *     the order of their ids
 * @param trend the newest runs up to this one, which is the last
 */
public record Overview(
    String network,
    String run,
    LocalDate asOf,
    Optional<LocalDate> knownBy,
    long animals,
    List<Count> counts,
    Changes changes,
    long questions,
    List<Unjudged> notJudged,
    List<SourceStatus> sources,
    List<OrganisationId> silent,
    List<RunFigures> trend) {
  public Overview {
    counts = List.copyOf(counts);
    notJudged = List.copyOf(notJudged);
    sources = List.copyOf(sources);
    silent = List.copyOf(silent);
    trend = List.copyOf(trend);
  }

  /** How many runs a trend goes back, this one included: with one a month, a year. */
  static final int RUNS = 12;

  /**
   * Follow-ups of one kind and band that one organisation can act on.
   *
   * @param listed whether its lists show them; else they are counted here only
   */
  public record Count(
      FindingKind kind, Band band, OrganisationId organisation, boolean listed, long followUps) {}

  /**
   * What became of follow-ups since the run before.
   *
   * @param settledByPeople how many are not listed because a person settled them, now or before
   * @param answered how many are open and not listed for now, because they were answered
   * @param snoozed how many are open and not listed for now, because they were put off
   * @param closedAfterAnswers how many of the closed had been answered
   */
  public record Changes(
      long opened,
      long stillOpen,
      long closed,
      long settledByPeople,
      long answered,
      long snoozed,
      long closedAfterAnswers) {}

  /** How many animals could not be judged for want of one registry's records. */
  public record Unjudged(OrganisationId registry, NotJudged.Reason reason, long animals) {}

  /**
   * What a source has sent.
   *
   * @param newestExport the newest day that one of its exports speaks for
   * @param imports how many were imported
   * @param isLate whether that day is more than a month before the day that was judged
   * @param withheld exports whose disappearances are not taken at their word
   */
  public record SourceStatus(
      SourceId source,
      OrganisationId organisation,
      LocalDate newestExport,
      boolean isLate,
      long imports,
      Quality quality,
      List<Withheld> withheld) {
    public SourceStatus {
      withheld = List.copyOf(withheld);
    }
  }

  /** Records that an export no longer lists, held back until it is confirmed or overtaken. */
  public record Withheld(LocalDate export, long records) {}

  /** How many follow-ups there are. */
  public long followUps() {
    return sum(count -> true);
  }

  /** How many of one kind. */
  public long followUps(FindingKind kind) {
    return sum(count -> count.kind() == kind);
  }

  /** How many of one band. */
  public long followUps(Band band) {
    return sum(count -> count.band() == band);
  }

  /** How many of one kind and band. */
  public long followUps(FindingKind kind, Band band) {
    return sum(count -> count.kind() == kind && count.band() == band);
  }

  /** How many one organisation can act on by its list, those that wait there included. */
  public long followUps(OrganisationId organisation) {
    return sum(count -> count.listed() && count.organisation().equals(organisation));
  }

  /** How many of them in one band. */
  public long followUps(OrganisationId organisation, Band band) {
    return sum(
        count ->
            count.listed() && count.organisation().equals(organisation) && count.band() == band);
  }

  /** How many are counted here and on no list. */
  public long countedOnly() {
    return sum(count -> !count.listed());
  }

  private long sum(Predicate<Count> wanted) {
    return counts.stream().filter(wanted).mapToLong(Count::followUps).sum();
  }

  /** The sources of which nothing came in within the month up to the day that was judged. */
  public List<SourceStatus> late() {
    return sources.stream().filter(SourceStatus::isLate).toList();
  }

  /** Who had follow-ups that were settled in one of the runs of the trend, in order of ids. */
  public List<OrganisationId> settlers() {
    return trend.stream()
        .flatMap(run -> run.closed().stream())
        .map(RunFigures.Closed::organisation)
        .distinct()
        .sorted()
        .toList();
  }

  /** How many follow-ups of an organisation were settled, by the last of the runs of the trend. */
  public long settledLately(OrganisationId organisation, int runs) {
    return trend.subList(Math.max(0, trend.size() - runs), trend.size()).stream()
        .mapToLong(run -> run.closedBy(organisation))
        .sum();
  }

  /** Whether any source has disappearances withheld. */
  public boolean anyWithheld() {
    return sources.stream().anyMatch(source -> !source.withheld().isEmpty());
  }

  /** The organisations that can act on something by their lists, in the order of their ids. */
  public List<OrganisationId> organisations() {
    return counts.stream()
        .filter(Count::listed)
        .map(Count::organisation)
        .distinct()
        .sorted()
        .toList();
  }
}
