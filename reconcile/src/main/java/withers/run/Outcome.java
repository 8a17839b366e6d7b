package withers.run;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import withers.cases.CaseKey;
import withers.cases.Channel;
import withers.chip.ChipNumber;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.finding.OpenQuestion;
import withers.finding.RecordFindings;
import withers.packed.LazyList;
import withers.rule.Assessment;

/** What was found, before follow-ups are looked at. Immutable. */
public final class Outcome {

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
  private final Glance glance;
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
    this.glance = new Glance(this.assessments, records.findings());
    this.findings =
        LazyList.at(
            glance.found.stream().mapToInt(Found::at),
            LazyList.together(List.of(ofAnimals(), records.findings())));
  }

  private List<Finding> ofAnimals() {
    return LazyList.of(assessments.size(), at -> assessments.get(at).finding().orElseThrow());
  }

  /** What is asked of all that was found, seen in one walk: each step of it makes one anew. */
  private static final class Glance {
    private final List<Found> found = new ArrayList<>();
    private final Map<ChipNumber, Set<FindingKind>> undecided = new HashMap<>();
    private final List<NotJudged> notJudged = new ArrayList<>();
    private final IntStream.Builder asking = IntStream.builder();
    private final IntStream.Builder settled = IntStream.builder();
    private final int[] withQuestion;
    private final int[] withSettled;

    Glance(List<Assessment> assessments, List<Finding> ofRecords) {
      int at = 0;
      for (Assessment assessment : assessments) {
        take(assessment, at++);
      }
      for (Finding finding : ofRecords) {
        found.add(Found.of(finding, at++));
      }
      Collections.sort(found);
      withQuestion = asking.build().toArray();
      withSettled = settled.build().toArray();
    }

    private void take(Assessment assessment, int at) {
      assessment.finding().ifPresent(finding -> found.add(Found.of(finding, at)));
      if (!assessment.undecided().isEmpty()) {
        assessment.chips().forEach(chip -> undecided.put(chip, assessment.undecided()));
      }
      notJudged.addAll(assessment.notJudged());
      if (assessment.question().isPresent()) {
        asking.add(at);
      }
      if (!assessment.settled().isEmpty()) {
        settled.add(at);
      }
    }
  }

  private Outcome(Outcome same, Map<CaseKey, Channel> channels) {
    this.animals = same.animals;
    this.assessments = same.assessments;
    this.records = same.records;
    this.answered = same.answered;
    this.channels = Map.copyOf(channels);
    this.glance = same.glance;
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

  /** What is known of the findings without making them, in the same order. */
  List<Found> found() {
    return Collections.unmodifiableList(glance.found);
  }

  /** What could not be decided, of the animals with these numbers. */
  Map<ChipNumber, Set<FindingKind>> undecided() {
    return Collections.unmodifiableMap(glance.undecided);
  }

  /**
   * What a human may be able to tell of animals of which lists say nothing else: the newest keepers
   * first.
   */
  public List<OpenQuestion> questions(Listing listing) {
    return of(glance.withQuestion)
        .filter(a -> a.finding().map(Finding::caseKey).filter(k -> !listing.isAside(k)).isEmpty())
        .flatMap(a -> a.question().stream())
        .sorted(QUESTIONS)
        .toList();
  }

  /** Findings that are held back, because somebody found them right as they are; in no order. */
  public List<Finding> heldBack() {
    Stream<Finding> ofAnimals = of(glance.withSettled).flatMap(a -> a.settled().stream());
    return Stream.concat(ofAnimals, records.settled().stream()).toList();
  }

  private Stream<Assessment> of(int... indices) {
    return IntStream.of(indices).mapToObj(assessments::get);
  }

  /** In order of registry, reason and anchor. */
  public List<NotJudged> notJudged() {
    return Stream.concat(glance.notJudged.stream(), records.notJudged().stream())
        .sorted(NOT_JUDGED)
        .toList();
  }
}
