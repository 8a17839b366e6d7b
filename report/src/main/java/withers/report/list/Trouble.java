package withers.report.list;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.chip.ChipNumber;
import withers.finding.Damage;
import withers.finding.Evidence;
import withers.finding.Evidence.Part;
import withers.finding.Finding;
import withers.finding.Newer;
import withers.finding.Stock;
import withers.report.text.OneLine;
import withers.report.text.Texts;

/** What is wrong with one animal's records, in a sentence or two. */
final class Trouble {
  private static final Set<Part> FOUND = Set.of(Part.FOUND, Part.TAKEN_IN);

  private final Texts texts;
  private final Phrases phrases;
  private final Steps steps;

  Trouble(Texts texts, Phrases phrases, Steps steps) {
    this.texts = texts;
    this.phrases = phrases;
    this.steps = steps;
  }

  String with(Situation situation) {
    Finding finding = situation.finding();
    String keeper = phrases.who(situation.custodian());
    String registered = phrases.all(situation.registered());
    return switch (finding.kind()) {
      case FOUND_WAITING -> waiting(finding);
      case LOST_UNREACHABLE -> lost(situation);
      case NUMBER_ON_TWO_ANIMALS ->
          say(finding, "", steps.fields(finding), steps.numbers(finding.chips()));
      case CUSTODY_UNCLEAR -> unclear(finding);
      case CHIPS_DIVERGE -> say(finding, "", steps.numbers(finding.chips()));
      case CONTACT_BEHIND ->
          say(finding, situation.registeredToReader() ? ".self" : "", keeper, registered);
      case PLACEHOLDER_CONTACT, NOT_DETECTED, SCAN_OVERDUE, REGISTERED_AFTER_DEATH ->
          say(finding, "", keeper, steps.numbers(situation.numbers()));
      case RECORDS_BEHIND -> say(finding, "", keeper, registered);
      case MISTYPED_REGISTRATION ->
          say(
              finding,
              "",
              keeper,
              steps.numbers(finding.chips()),
              steps.numbers(situation.numbers()),
              phrases.organisations(situation.registries()));
      case PREPAID_UNUSED, UNREGISTERED, NON_ISO_ONLY ->
          say(finding, "", keeper, steps.numbers(finding.chips()));
      case REGISTRIES_DISAGREE ->
          say(finding, "", phrases.organisations(situation.registries()), registered);
      case TRAIL_ENDS_AT_PURCHASER -> say(finding, "", steps.numbers(supplied(finding)));
      case REGISTERED_ELSEWHERE ->
          say(
              finding,
              "",
              phrases.organisations(situation.registries()),
              steps.numbers(situation.numbers()));
      case DETAILS_DIFFER ->
          say(finding, newer(finding), finding.fields().size(), steps.fields(finding));
      case STOCK_UNACCOUNTED -> finding.stock().map(one -> unaccounted(finding, one)).orElseThrow();
      case NUMBER_DAMAGED -> finding.damage().map(one -> damaged(finding, one)).orElseThrow();
    };
  }

  private static String newer(Finding finding) {
    return switch (finding.newer().orElse(Newer.UNCLEAR)) {
      case RECORDS -> ".older";
      case REGISTRATION -> ".newer";
      case UNCLEAR -> "";
    };
  }

  /** The numbers of which a supply is told. */
  private static List<ChipNumber> supplied(Finding finding) {
    return finding.evidence().stream()
        .filter(evidence -> evidence.part() == Part.SUPPLIED)
        .map(Evidence::chip)
        .toList();
  }

  private String unaccounted(Finding finding, Stock stock) {
    String which = stock.unaccounted() == stock.first().size() ? ".all" : "";
    return say(
        finding,
        which,
        Numbers.spoken(stock.range().first()),
        Numbers.spoken(stock.range().last()),
        stock.unaccounted(),
        steps.numbers(stock.first()));
  }

  private String damaged(Finding finding, Damage damage) {
    String written = OneLine.of(damage.written());
    if (damage.surviving().isPresent()) {
      return say(finding, ".cut", written, damage.surviving().get(), alike(damage));
    }
    return finding.chips().isEmpty()
        ? say(finding, "", written, readings(damage))
        : say(finding, ".found", written, steps.numbers(finding.chips()));
  }

  private String readings(Damage damage) {
    return texts.either(damage.candidates().stream().map(Numbers::spoken).toList());
  }

  private String alike(Damage damage) {
    if (damage.alike() == 0) {
      return texts.say("damaged.alike.none");
    }
    String which = damage.alike() == damage.candidates().size() ? "all" : "some";
    return texts.say("damaged.alike." + which, damage.alike(), steps.numbers(damage.candidates()));
  }

  private String waiting(Finding finding) {
    return lastOf(FOUND, finding)
        .map(day -> say(finding, "", texts.date(day)))
        .orElseGet(() -> say(finding, ".undated"));
  }

  private String lost(Situation situation) {
    Finding finding = situation.finding();
    String variant = situation.registered().isEmpty() ? "" : ".registered";
    return lastOf(Set.of(Part.LOST), finding)
        .map(day -> say(finding, variant, texts.date(day)))
        .orElseGet(() -> say(finding, ".undated"));
  }

  /** Of a death that others contradict, or of a day that left the animal with several. */
  private String unclear(Finding finding) {
    return lastOf(Set.of(Part.DIED), finding)
        .map(day -> say(finding, ".death", texts.date(day)))
        .orElseGet(() -> say(finding, ""));
  }

  /** The last day of evidence of these parts. */
  private static Optional<LocalDate> lastOf(Set<Part> parts, Finding finding) {
    return finding.evidence().stream()
        .filter(evidence -> parts.contains(evidence.part()))
        .map(Evidence::day)
        .max(Comparator.naturalOrder());
  }

  private String say(Finding finding, String variant, Object... more) {
    List<Object> arguments = new ArrayList<>(List.of(phrases.opening(finding)));
    arguments.addAll(Arrays.asList(more));
    return texts.say("wrong." + finding.kind().word() + variant, arguments.toArray());
  }
}
