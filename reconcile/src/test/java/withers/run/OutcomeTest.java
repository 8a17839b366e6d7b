package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.cases.Channel;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.fact.Species;
import withers.finding.Band;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.finding.NotJudged.Reason;
import withers.finding.OpenQuestion;
import withers.finding.Priority;
import withers.finding.RecordFindings;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.organisation.Directory;
import withers.rule.Assessment;
import withers.world.Chips;

/** What is told of all that a run found. Invented. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class OutcomeTest {

  private static final OrganisationId SHELTER = new OrganisationId("shelter");
  private static final Listing LISTING = new Listing(Directory.EMPTY, 0);

  private static ChipNumber chip(int number) {
    return Chips.chip(number);
  }

  private static Finding finding(FindingKind kind, Anchor anchor, List<ChipNumber> chips) {
    return finding(kind, anchor, chips, new Priority(Band.THIS_MONTH, 500, List.of()));
  }

  private static Finding finding(
      FindingKind kind, Anchor anchor, List<ChipNumber> chips, Priority priority) {
    return SampleFindings.of(new CaseKey(kind.word(), anchor, SHELTER, "s1"), chips, priority);
  }

  private static Finding behind(int number, Band band, long harm) {
    return finding(
        FindingKind.CONTACT_BEHIND,
        new Anchor.Chip(chip(number)),
        List.of(chip(number)),
        new Priority(band, harm, List.of()));
  }

  private static Finding damaged(String source, Band band, long harm) {
    return finding(
        FindingKind.NUMBER_DAMAGED,
        new Anchor.Source(new SourceId(source)),
        List.of(),
        new Priority(band, harm, List.of()));
  }

  private static Assessment found(Finding finding) {
    return new Assessment(
        finding.chips(), Optional.of(finding), Set.of(), Set.of(), Optional.empty(), List.of());
  }

  private static Assessment asked(Optional<Finding> finding, OpenQuestion question) {
    return new Assessment(
        question.chips(), finding, Set.of(), Set.of(), Optional.of(question), List.of());
  }

  private static OpenQuestion question(int number, String since) {
    return new OpenQuestion(
        List.of(chip(number)),
        Species.DOG,
        Optional.empty(),
        SHELTER,
        new RecordKey("s" + number),
        new Who.Person(new ContactRef(1, 2, 3), new SourceId("shelter"), SHELTER),
        LocalDate.parse(since),
        List.of());
  }

  private static RecordFindings ofRecords(Finding... findings) {
    return new RecordFindings(List.of(findings), Set.of(), Set.of(), List.of());
  }

  private static Outcome outcome(RecordFindings records, Assessment... assessments) {
    return new Outcome(assessments.length, List.of(assessments), records, Set.of());
  }

  @Test
  void findings_come_by_band_then_by_harm_the_greatest_first_then_by_key() {
    Outcome outcome =
        outcome(
            ofRecords(damaged("vale", Band.TODAY, 1), damaged("hill", Band.THIS_WEEK, 7)),
            found(behind(103, Band.THIS_WEEK, 7)),
            asked(Optional.empty(), question(110, "2026-01-01")),
            found(behind(102, Band.THIS_WEEK, 7)),
            found(behind(104, Band.THIS_WEEK, 9)),
            found(behind(100, Band.WHEN_POSSIBLE, 99)));

    List<Finding> inOrder =
        List.of(
            damaged("vale", Band.TODAY, 1),
            behind(104, Band.THIS_WEEK, 9),
            behind(102, Band.THIS_WEEK, 7),
            behind(103, Band.THIS_WEEK, 7),
            damaged("hill", Band.THIS_WEEK, 7),
            behind(100, Band.WHEN_POSSIBLE, 99));
    assertThat(outcome.findings()).isEqualTo(inOrder);
    assertThat(outcome.found())
        .extracting(Found::key)
        .isEqualTo(inOrder.stream().map(Finding::caseKey).toList());
    assertThat(outcome.found()).extracting(Found::harm).containsExactly(1L, 9L, 7L, 7L, 7L, 99L);
  }

  @Test
  void a_follow_up_has_a_name_for_each_number_its_key_first() {
    Finding finding =
        finding(
            FindingKind.CONTACT_BEHIND,
            new Anchor.Chip(chip(50)),
            List.of(chip(50), chip(100), chip(101)));
    CaseKey key = finding.caseKey();

    assertThat(Found.of(finding, 0).names()).containsExactly(key, named(key, 100), named(key, 101));
    assertThat(Found.of(behind(100, Band.TODAY, 1), 0).names()).containsExactly(named(key, 100));
  }

  private static CaseKey named(CaseKey key, int number) {
    return new CaseKey(key.rule(), new Anchor.Chip(chip(number)), key.actor(), key.recordKey());
  }

  @Test
  void what_could_not_be_decided_is_known_by_every_number_of_the_animal() {
    Set<FindingKind> kinds = Set.of(FindingKind.UNREGISTERED, FindingKind.CONTACT_BEHIND);
    Assessment undecided =
        new Assessment(
            List.of(chip(100), chip(101)),
            Optional.empty(),
            kinds,
            Set.of(),
            Optional.empty(),
            List.of());

    assertThat(outcome(ofRecords(), undecided, found(behind(102, Band.TODAY, 1))).undecided())
        .isEqualTo(Map.of(chip(100), kinds, chip(101), kinds));
  }

  @Test
  void what_was_not_judged_comes_by_registry_then_by_what_is_lacking_then_by_number() {
    OrganisationId north = new OrganisationId("north");
    OrganisationId south = new OrganisationId("south");
    List<NotJudged> first =
        IntStream.range(100, 110)
            .mapToObj(number -> new NotJudged(chip(number), north, Reason.EXPORT_TOO_OLD))
            .toList();
    NotJudged then = new NotJudged(chip(100), north, Reason.NEVER_EXPORTS);
    NotJudged last = new NotJudged(chip(100), south, Reason.EXPORT_TOO_OLD);
    Assessment unjudged =
        new Assessment(
            List.of(chip(100)),
            Optional.empty(),
            Set.of(),
            Set.of(last, then),
            Optional.empty(),
            List.of());
    RecordFindings records = new RecordFindings(List.of(), Set.of(), Set.copyOf(first), List.of());

    assertThat(outcome(records, unjudged).notJudged())
        .containsExactlyElementsOf(Stream.concat(first.stream(), Stream.of(then, last)).toList());
  }

  @Test
  void questions_are_asked_of_animals_of_which_lists_say_nothing_else_the_newest_first() {
    Finding aside =
        finding(FindingKind.SCAN_OVERDUE, new Anchor.Chip(chip(103)), List.of(chip(103)));
    Outcome outcome =
        outcome(
            ofRecords(),
            asked(Optional.of(aside), question(103, "2026-01-01")),
            asked(Optional.of(behind(101, Band.TODAY, 1)), question(101, "2026-01-05")),
            asked(Optional.empty(), question(102, "2026-01-02")),
            found(behind(104, Band.TODAY, 1)),
            asked(Optional.empty(), question(100, "2026-01-01")));

    assertThat(outcome.questions(LISTING))
        .containsExactly(
            question(102, "2026-01-02"), question(100, "2026-01-01"), question(103, "2026-01-01"));
  }

  @Test
  void what_is_held_back_is_of_animals_and_of_records() {
    Finding ofAnimal = behind(100, Band.TODAY, 1);
    Finding ofRecord = damaged("hill", Band.TODAY, 1);
    Assessment settled =
        new Assessment(
            List.of(chip(100)),
            Optional.empty(),
            Set.of(),
            Set.of(),
            Optional.empty(),
            List.of(ofAnimal));
    RecordFindings records = new RecordFindings(List.of(), Set.of(), Set.of(), List.of(ofRecord));

    Outcome outcome = outcome(records, found(behind(101, Band.TODAY, 1)), settled);

    assertThat(outcome.heldBack()).containsExactlyInAnyOrder(ofAnimal, ofRecord);
    assertThat(outcome.findings()).containsExactly(behind(101, Band.TODAY, 1));
  }

  @Test
  void with_what_clients_wish_it_is_the_same_otherwise() {
    Finding finding = behind(100, Band.TODAY, 1);
    Outcome outcome =
        new Outcome(7, List.of(found(finding)), ofRecords(), Set.of(finding.caseKey()));

    Outcome wished = outcome.with(Map.of(finding.caseKey(), Channel.EMAIL));

    assertThat(outcome.channels()).isEmpty();
    assertThat(wished.channels()).isEqualTo(Map.of(finding.caseKey(), Channel.EMAIL));
    assertThat(wished.animals()).isEqualTo(7);
    assertThat(wished.answered()).containsExactly(finding.caseKey());
    assertThat(wished.findings()).containsExactly(finding);
    assertThat(wished.found()).isEqualTo(outcome.found());
  }
}
