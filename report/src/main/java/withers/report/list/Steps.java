package withers.report.list;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.organisation.Organisation;
import withers.report.text.Texts;

/** What to do about a finding, step by step. */
final class Steps {

  /** Kinds of which everything that is to do begins with reaching whoever has the animal. */
  private static final Set<FindingKind> CALLING =
      EnumSet.of(
          FindingKind.RECORDS_BEHIND,
          FindingKind.CHIPS_DIVERGE,
          FindingKind.CONTACT_BEHIND,
          FindingKind.PLACEHOLDER_CONTACT,
          FindingKind.MISTYPED_REGISTRATION,
          FindingKind.PREPAID_UNUSED,
          FindingKind.UNREGISTERED,
          FindingKind.REGISTRIES_DISAGREE,
          FindingKind.DETAILS_DIFFER,
          FindingKind.REGISTERED_ELSEWHERE,
          FindingKind.NOT_DETECTED);

  private final Texts texts;
  private final Phrases phrases;

  Steps(Texts texts, Phrases phrases) {
    this.texts = texts;
    this.phrases = phrases;
  }

  List<String> about(Situation situation) {
    return situation.isToBeLeftAlone() && CALLING.contains(situation.finding().kind())
        ? leftAlone(situation)
        : byKind(situation);
  }

  private List<String> leftAlone(Situation situation) {
    return List.of(
        texts.say("reach.not-at-all", phrases.who(situation.custodian())),
        texts.say("reach.not-at-all.instead"));
  }

  private List<String> byKind(Situation situation) {
    return switch (situation.finding().kind()) {
      case FOUND_WAITING -> found(situation);
      case RECORDS_BEHIND ->
          List.of(
              step(situation, "look"),
              reach(situation),
              step(situation, "ask"),
              step(situation, "put"));
      case CHIPS_DIVERGE ->
          List.of(
              reach(situation),
              step(situation, "scan"),
              step(situation, "same"),
              step(situation, "no"));
      case LOST_UNREACHABLE -> lost(situation);
      case NUMBER_ON_TWO_ANIMALS, CUSTODY_UNCLEAR ->
          List.of(step(situation, "look"), step(situation, "ask"), step(situation, "put"));
      case CONTACT_BEHIND -> askThen(situation, contactChange(situation));
      case PLACEHOLDER_CONTACT,
          MISTYPED_REGISTRATION,
          PREPAID_UNUSED,
          UNREGISTERED,
          REGISTRIES_DISAGREE,
          DETAILS_DIFFER,
          REGISTERED_ELSEWHERE ->
          askThen(situation, "yes");
      case NON_ISO_ONLY -> named(situation, "scan", "tell");
      case TRAIL_ENDS_AT_PURCHASER, STOCK_UNACCOUNTED -> named(situation, "look", "used", "passed");
      case NOT_DETECTED ->
          List.of(reach(situation), step(situation, "scan"), step(situation, "vet"));
      case SCAN_OVERDUE -> List.of(step(situation, "scan"), step(situation, "note"));
      case REGISTERED_AFTER_DEATH -> List.of(step(situation, "look"), step(situation, "tell"));
      case NUMBER_DAMAGED -> List.of();
    };
  }

  /** What to do once for all follow-ups of a kind; else each says so itself. */
  List<String> once(FindingKind kind) {
    return kind == FindingKind.NUMBER_DAMAGED
        ? Stream.of("column", "again", "single")
            .map(name -> texts.say("step.number-damaged." + name))
            .toList()
        : List.of();
  }

  private List<String> named(Situation situation, String... names) {
    return Stream.of(names).map(name -> step(situation, name)).toList();
  }

  private List<String> askThen(Situation situation, String change) {
    return List.of(
        reach(situation), step(situation, "ask"), step(situation, change), step(situation, "no"));
  }

  /** Whoever is registered can hand the registration over; that is shorter than the other way. */
  private static String contactChange(Situation situation) {
    return situation.registeredToReader() ? "self" : "yes";
  }

  private List<String> found(Situation situation) {
    List<String> steps = new ArrayList<>();
    for (Finding.Registration one : situation.finding().registered()) {
      String registry = situation.reader().organisation(one.registry()).name();
      steps.add(texts.say("step.found-waiting.registry", "", Numbers.spoken(one.chip()), registry));
    }
    if (situation.isToBeLeftAlone()) {
      steps.addAll(leftAlone(situation));
    } else {
      askLast(situation).ifPresent(steps::add);
    }
    steps.add(step(situation, "scan"));
    steps.add(step(situation, "note"));
    return steps;
  }

  private List<String> lost(Situation situation) {
    List<String> steps = new ArrayList<>();
    steps.add(step(situation, "reporter"));
    steps.add(step(situation, situation.registries().isEmpty() ? "register" : "registry"));
    steps.add(step(situation, "note"));
    return steps;
  }

  private Optional<String> askLast(Situation situation) {
    String animal = phrases.inside(situation.finding());
    Seen last = situation.custodian();
    if (last instanceof Seen.Client client) {
      return said("step.found-waiting.client", phrases.who(client), animal);
    }
    if (last instanceof Seen.Masked masked) {
      return said("step.found-waiting.holder", masked.holder().name(), animal);
    }
    if (last instanceof Seen.Member member && !member.self()) {
      return said("step.found-waiting.organisation", member.organisation().name(), animal);
    }
    return last instanceof Seen.Removed ? said("reach.removed") : Optional.empty();
  }

  private Optional<String> said(String key, Object... arguments) {
    return Optional.of(texts.say(key, arguments));
  }

  /** The step that gets hold of whoever has the animal. */
  private String reach(Situation situation) {
    String animal = phrases.inside(situation.finding());
    Seen custodian = situation.custodian();
    if (custodian instanceof Seen.Client client) {
      String how = Calls.canBeCalled(client) ? "reach.client" : "reach.client.quiet";
      return texts.say(how, phrases.who(client));
    }
    if (custodian instanceof Seen.Masked masked) {
      return texts.say("reach.holder", masked.holder().name(), animal);
    }
    if (custodian instanceof Seen.Member member) {
      return member.self()
          ? texts.say("reach.self", animal)
          : texts.say("reach.organisation", member.organisation().name(), animal);
    }
    return texts.say(reachNameless(custodian), animal);
  }

  private static String reachNameless(Seen custodian) {
    if (custodian instanceof Seen.Removed) {
      return "reach.removed";
    }
    return custodian instanceof Seen.Outside ? "reach.outside" : "reach.nobody";
  }

  private String step(Situation situation, String name) {
    FindingKind kind = situation.finding().kind();
    return texts.say(
        "step." + kind.word() + "." + name,
        phrases.inside(situation.finding()),
        numbers(situation.numbers()),
        phrases.organisations(situation.registries()),
        particulars(situation));
  }

  /**
   * What a step of this kind spells out: fields that differ, its own numbers, or which is where.
   */
  private String particulars(Situation situation) {
    Finding finding = situation.finding();
    return switch (finding.kind()) {
      case DETAILS_DIFFER -> fields(finding);
      case MISTYPED_REGISTRATION -> numbers(finding.chips());
      default ->
          texts.together(finding.registered().stream().map(one -> place(situation, one)).toList());
    };
  }

  private String place(Situation situation, Finding.Registration one) {
    Organisation registry = situation.reader().organisation(one.registry());
    return texts.say("step.place", Numbers.spoken(one.chip()), registry.name());
  }

  String fields(Finding finding) {
    return finding.fields().isEmpty()
        ? texts.say("field.any")
        : texts.together(finding.fields().stream().map(this::field).distinct().toList());
  }

  private String field(String name) {
    return texts.say("field." + name);
  }

  String numbers(List<ChipNumber> numbers) {
    return texts.together(numbers.stream().map(Numbers::spoken).toList());
  }
}
