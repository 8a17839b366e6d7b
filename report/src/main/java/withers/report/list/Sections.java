package withers.report.list;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import withers.cases.CaseKey;
import withers.cases.Reference;
import withers.finding.Band;
import withers.finding.Evidence;
import withers.finding.Finding;
import withers.finding.Finding.Certainty;
import withers.finding.FindingKind;
import withers.finding.Life;
import withers.id.RecordKey;
import withers.report.text.OneLine;
import withers.report.text.Texts;

/** Puts one reader's findings into words, by band and by what has to be done. */
final class Sections {

  private final Texts texts;
  private final Reader reader;
  private final Predicate<CaseKey> isNew;
  private final SoFar soFar;
  private final Phrases phrases;
  private final Trouble trouble;
  private final Calls calls;
  private final Steps steps;
  private final Grounds grounds;
  private final Comparisons comparisons;

  Sections(Texts texts, Reader reader, Predicate<CaseKey> isNew, SoFar soFar) {
    this.soFar = soFar;
    this.texts = texts;
    this.reader = reader;
    this.isNew = isNew;
    this.phrases = new Phrases(texts);
    this.calls = new Calls(texts, phrases);
    this.steps = new Steps(texts, phrases);
    this.trouble = new Trouble(texts, phrases, steps);
    this.grounds = new Grounds(texts, phrases);
    this.comparisons = new Comparisons(texts, reader);
  }

  List<BandSection> of(List<Finding> findings) {
    OneCall oneCall = OneCall.of(findings, reader);
    Map<Band, List<Finding>> byBand =
        grouped(Band.class, findings, finding -> finding.priority().band());
    return byBand.entrySet().stream()
        .map(entry -> new BandSection(entry.getKey(), tasks(entry.getValue(), oneCall)))
        .toList();
  }

  private List<Task> tasks(List<Finding> findings, OneCall oneCall) {
    return grouped(FindingKind.class, findings, Finding::kind).entrySet().stream()
        .map(entry -> task(entry.getKey(), entry.getValue(), oneCall))
        .toList();
  }

  private Task task(FindingKind kind, List<Finding> findings, OneCall oneCall) {
    String caution = texts.say("caution." + kind.word());
    List<FollowUp> followUps =
        oneCall.together(findings).stream().map(finding -> followUp(finding, oneCall)).toList();
    return new Task(kind, caution, steps.once(kind), followUps);
  }

  private static <K extends Enum<K>> Map<K, List<Finding>> grouped(
      Class<K> keys, List<Finding> findings, Function<Finding, K> key) {
    Map<K, List<Finding>> groups = new EnumMap<>(keys);
    findings.forEach(f -> groups.computeIfAbsent(key.apply(f), none -> new ArrayList<>()).add(f));
    return groups;
  }

  private FollowUp followUp(Finding finding, OneCall oneCall) {
    CaseKey key = finding.caseKey();
    Situation situation = Situation.of(finding, reader, soFar.channel(key));
    Mark mark = isNew.test(key) ? Mark.NEW : Mark.OPEN;
    return new FollowUp(
        Reference.of(key),
        mark,
        phrases.title(finding),
        finding.chips(),
        finding.damage().map(damage -> OneLine.of(damage.written())),
        ownRecord(finding).map(record -> OneLine.of(record.value())),
        trouble.with(situation),
        soFar.of(key, mark),
        calls.about(situation),
        steps.about(situation),
        grounds.of(situation),
        comparisons.of(finding.registered()),
        cautions(situation, oneCall.others(finding)),
        finding.evidence().stream().map(Evidence::day).max(Comparator.naturalOrder()));
  }

  /** One that is not listed for now. */
  Resting resting(Finding finding, Life life) {
    return new Resting(
        Reference.of(finding.caseKey()),
        phrases.title(finding),
        ownRecord(finding).map(record -> OneLine.of(record.value())).orElse(""),
        soFar.resting(life));
  }

  /** The record of a supply is the supplier's. */
  private static Optional<RecordKey> ownRecord(Finding finding) {
    return finding.stock().isPresent() ? Optional.empty() : finding.actorRecord();
  }

  private List<String> cautions(Situation situation, List<String> others) {
    List<String> cautions = new ArrayList<>();
    if (situation.isToBeLeftAlone()) {
      cautions.add(texts.say("caution.not-at-all"));
    }
    if (!others.isEmpty()) {
      cautions.add(texts.say("caution.one-call", String.join(", ", others)));
    }
    boolean isOfRecord = situation.finding().damage().isPresent();
    if (situation.finding().certainty() == Certainty.INFERRED && !isOfRecord) {
      cautions.add(texts.say("caution.inferred"));
    }
    if (situation.anyRemoved()) {
      cautions.add(texts.say("caution.removed"));
    }
    return cautions;
  }
}
