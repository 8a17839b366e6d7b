package withers.report.list;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import withers.finding.Evidence;
import withers.organisation.Organisation;
import withers.report.text.Texts;

/** Whom to call about a finding: the first one first, nobody twice, never the reader itself. */
final class Calls {

  private final Texts texts;
  private final Phrases phrases;

  Calls(Texts texts, Phrases phrases) {
    this.texts = texts;
    this.phrases = phrases;
  }

  List<Callee> about(Situation situation) {
    Map<String, Callee> byName = new LinkedHashMap<>();
    for (Callee callee : everyone(situation)) {
      byName.putIfAbsent(callee.name(), callee);
    }
    return List.copyOf(byName.values());
  }

  private List<Callee> everyone(Situation situation) {
    return switch (situation.finding().kind()) {
      case FOUND_WAITING, LOST_UNREACHABLE ->
          joined(
              List.of(
                  registries(situation),
                  registeredOrganisations(situation),
                  custodian(situation, "call.last-keeper")));
      case CHIPS_DIVERGE,
          CONTACT_BEHIND,
          PLACEHOLDER_CONTACT,
          MISTYPED_REGISTRATION,
          REGISTRIES_DISAGREE,
          DETAILS_DIFFER ->
          joined(List.of(custodian(situation, "call.keeper"), registries(situation)));
      case RECORDS_BEHIND,
          PREPAID_UNUSED,
          UNREGISTERED,
          NOT_DETECTED,
          REGISTERED_ELSEWHERE,
          SCAN_OVERDUE,
          NON_ISO_ONLY ->
          custodian(situation, "call.keeper");
      case NUMBER_ON_TWO_ANIMALS, CUSTODY_UNCLEAR -> others(situation);
      case REGISTERED_AFTER_DEATH -> registries(situation);
      case TRAIL_ENDS_AT_PURCHASER, NUMBER_DAMAGED, STOCK_UNACCOUNTED -> List.of();
    };
  }

  /** The other organisations whose records the finding rests on. */
  private List<Callee> others(Situation situation) {
    return situation.finding().evidence().stream()
        .map(Evidence::saidBy)
        .distinct()
        .filter(id -> !situation.reader().is(id))
        .map(situation.reader()::organisation)
        .map(organisation -> organisation(organisation, "call.record"))
        .toList();
  }

  private static List<Callee> joined(List<List<Callee>> parts) {
    return parts.stream().flatMap(List::stream).toList();
  }

  private List<Callee> custodian(Situation situation, String why) {
    Seen custodian = situation.custodian();
    if (situation.isToBeLeftAlone()) {
      return List.of();
    }
    if (custodian instanceof Seen.Client client) {
      return List.of(Callee.of(phrases.who(client), texts.say(why), client.contact()));
    }
    if (custodian instanceof Seen.Masked masked) {
      return List.of(organisation(masked.holder(), why + ".details"));
    }
    if (custodian instanceof Seen.Member member && !member.self()) {
      return List.of(organisation(member.organisation(), "call.organisation.keeper"));
    }
    return List.of();
  }

  private List<Callee> registries(Situation situation) {
    return situation.registries().stream()
        .filter(registry -> !situation.reader().is(registry.id()))
        .map(registry -> organisation(registry, "call.registry"))
        .toList();
  }

  private List<Callee> registeredOrganisations(Situation situation) {
    List<Callee> callees = new ArrayList<>();
    for (Seen seen : situation.registered()) {
      if (seen instanceof Seen.Member member && !member.self()) {
        callees.add(organisation(member.organisation(), "call.registered"));
      }
    }
    return callees;
  }

  private Callee organisation(Organisation organisation, String why) {
    return Callee.of(organisation.name(), texts.say(why), organisation.contact());
  }

  /** Whether the record has a number to call this client on. */
  static boolean canBeCalled(Seen.Client client) {
    return !client.contact().phones().isEmpty();
  }
}
