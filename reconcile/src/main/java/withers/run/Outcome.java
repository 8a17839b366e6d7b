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

/**
 * What was found, before follow-ups are looked at.
 *
 * @param animals how many animals the log tells of
 * @param assessments those that say something, in no order
 * @param records what was found about records
 * @param answered follow-ups that are gone by what people settled about people or numbers
 * @param channels how clients wish to be reached, by the follow-ups about them
 */
public record Outcome(
    long animals,
    List<Assessment> assessments,
    RecordFindings records,
    Set<CaseKey> answered,
    Map<CaseKey, Channel> channels) {

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

  public Outcome {
    assessments = List.copyOf(assessments);
    answered = Set.copyOf(answered);
    channels = Map.copyOf(channels);
  }

  /** The same, with what clients wish. */
  Outcome with(Map<CaseKey, Channel> wishes) {
    return new Outcome(animals, assessments, records, answered, wishes);
  }

  /** In total order: band, then harm descending, then case key. */
  public List<Finding> findings() {
    Stream<Finding> ofAnimals = assessments.stream().flatMap(a -> a.finding().stream());
    return Stream.concat(ofAnimals, records.findings().stream()).sorted(FINDINGS).toList();
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
