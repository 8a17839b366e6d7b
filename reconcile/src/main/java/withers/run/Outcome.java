package withers.run;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import withers.cases.CaseKey;
import withers.cases.Channel;
import withers.finding.Finding;
import withers.finding.NotJudged;
import withers.finding.OpenQuestion;
import withers.finding.RecordFindings;
import withers.rule.Assessment;

/** What was found, before follow-ups are looked at. Immutable. */
public final class Outcome {

  private static final Comparator<Finding> FINDINGS =
      Comparator.comparing((Finding finding) -> finding.priority().band())
          .thenComparing(finding -> finding.priority().harm(), Comparator.reverseOrder())
          .thenComparing(Finding::caseKey);

  private static final Comparator<NotJudged> NOT_JUDGED =
      Comparator.comparing(NotJudged::registry)
          .thenComparing(NotJudged::reason)
          .thenComparing(NotJudged::anchor);

  private static final Comparator<OpenQuestion> QUESTIONS =
      Comparator.comparing(OpenQuestion::since, Comparator.reverseOrder())
          .thenComparing(OpenQuestion::key);

  private final long animals;
  private final List<Assessment> assessments;
  private final RecordFindings records;
  private final Set<CaseKey> answered;
  private final Map<CaseKey, Channel> channels;
  private final List<Finding> findings;

  /**
   * What a run found.
   *
   * @param animals how many animals the log tells of
   * @param assessments those that say something, in no order
   * @param records what was found about records
   * @param answered follow-ups that are gone by what people settled about people or numbers
   */
  Outcome(
      long animals, List<Assessment> assessments, RecordFindings records, Set<CaseKey> answered) {
    this.animals = animals;
    this.assessments = List.copyOf(assessments);
    this.records = records;
    this.answered = Set.copyOf(answered);
    this.channels = Map.of();
    this.findings =
        Stream.concat(
                this.assessments.stream().flatMap(a -> a.finding().stream()),
                records.findings().stream())
            .sorted(FINDINGS)
            .toList();
  }

  private Outcome(Outcome same, Map<CaseKey, Channel> channels) {
    this.animals = same.animals;
    this.assessments = same.assessments;
    this.records = same.records;
    this.answered = same.answered;
    this.channels = Map.copyOf(channels);
    this.findings = same.findings;
  }

  /** The same, with what clients wish. */
  Outcome with(Map<CaseKey, Channel> wishes) {
    return new Outcome(this, wishes);
  }

  /** How many animals the log tells of. */
  public long animals() {
    return animals;
  }

  /** The assessments that say something, in no order. */
  public List<Assessment> assessments() {
    return assessments;
  }

  /** What was found about records. */
  public RecordFindings records() {
    return records;
  }

  /** Follow-ups that are gone by what people settled about people or numbers. */
  public Set<CaseKey> answered() {
    return answered;
  }

  /** How clients wish to be reached, by the follow-ups about them. */
  public Map<CaseKey, Channel> channels() {
    return channels;
  }

  /** In total order: band, then harm descending, then case key. */
  public List<Finding> findings() {
    return findings;
  }

  /**
   * What a human may be able to tell of animals of which lists say nothing else: the newest keepers
   * first.
   */
  public List<OpenQuestion> questions(Listing listing) {
    return assessments.stream()
        .filter(a -> a.finding().map(Finding::caseKey).filter(k -> !listing.isAside(k)).isEmpty())
        .flatMap(a -> a.question().stream())
        .sorted(QUESTIONS)
        .toList();
  }

  /** Findings that are held back, because somebody found them right as they are; in no order. */
  public List<Finding> heldBack() {
    Stream<Finding> ofAnimals = assessments.stream().flatMap(a -> a.settled().stream());
    return Stream.concat(ofAnimals, records.settled().stream()).toList();
  }

  /** In order of registry, reason and anchor. */
  public List<NotJudged> notJudged() {
    Stream<NotJudged> ofAnimals = assessments.stream().flatMap(a -> a.notJudged().stream());
    return Stream.concat(ofAnimals, records.notJudged().stream()).sorted(NOT_JUDGED).toList();
  }
}
