package withers.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import withers.cases.CaseKey;
import withers.cases.Channel;
import withers.finding.Band;
import withers.finding.Finding;
import withers.finding.NotJudged;
import withers.finding.OpenQuestion;
import withers.finding.RecordFindings;
import withers.packed.LazyList;
import withers.rule.Assessment;

/** What was found, before follow-ups are looked at. Immutable. */
public final class Outcome {

  private static final Comparator<Found> FOUND =
      Comparator.comparing(Found::band)
          .thenComparing(Found::harm, Comparator.reverseOrder())
          .thenComparing(Found::key);

  /**
   * Where a finding stands.
   *
   * @param at of what was found about animals and then records
   */
  private record Found(Band band, long harm, CaseKey key, int at) {
    static Found of(Finding finding, int at) {
      return new Found(finding.priority().band(), finding.priority().harm(), finding.caseKey(), at);
    }
  }

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
  private final List<CaseKey> keys;
  private final List<Finding> findings;

  /**
   * What a run found.
   *
   * @param animals how many animals the log tells of
   * @param assessments those that say something, in no order; of a lazy list each is made whenever
   *     it is asked for
   * @param records what was found about records
   * @param answered follow-ups that are gone by what people settled about people or numbers
   */
  Outcome(
      long animals, List<Assessment> assessments, RecordFindings records, Set<CaseKey> answered) {
    this.animals = animals;
    this.assessments = LazyList.copyOf(assessments);
    this.records = records;
    this.answered = Set.copyOf(answered);
    this.channels = Map.of();
    List<Found> found = found();
    this.keys = found.stream().map(Found::key).toList();
    this.findings =
        LazyList.at(
            found.stream().mapToInt(Found::at),
            LazyList.together(List.of(ofAnimals(), records.findings())));
  }

  private List<Finding> ofAnimals() {
    return LazyList.of(assessments.size(), at -> assessments.get(at).finding().orElseThrow());
  }

  private List<Found> found() {
    List<Found> found = new ArrayList<>();
    int at = 0;
    for (Assessment assessment : assessments) {
      int here = at++;
      assessment.finding().ifPresent(finding -> found.add(Found.of(finding, here)));
    }
    for (Finding finding : records.findings()) {
      found.add(Found.of(finding, at++));
    }
    found.sort(FOUND);
    return found;
  }

  private Outcome(Outcome same, Map<CaseKey, Channel> channels) {
    this.animals = same.animals;
    this.assessments = same.assessments;
    this.records = same.records;
    this.answered = same.answered;
    this.channels = Map.copyOf(channels);
    this.keys = same.keys;
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

  /** The identities of the findings, in the same order. */
  List<CaseKey> keys() {
    return keys;
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
