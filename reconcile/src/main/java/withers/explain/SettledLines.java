package withers.explain;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.cases.Settled;
import withers.cases.Settlement;
import withers.cases.Settlement.MistakenNumber;
import withers.cases.Settlement.OfPeople;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.rule.Dossier;
import withers.settled.Settlements;

/** What people settled that bears upon a follow-up, a line each, in the order of recording. */
record SettledLines(Settlements settlements) {

  /**
   * The lines.
   *
   * @param dossier of the animal; empty when the follow-up is about a record
   */
  List<String> of(CaseKey key, Optional<Dossier> dossier) {
    Predicate<Settled> bears =
        dossier
            .<Predicate<Settled>>map(one -> settled -> bears(settled, key, one))
            .orElse(settled -> settled.key().equals(key));
    return settlements.all().stream().filter(bears).map(this::line).toList();
  }

  private static boolean bears(Settled settled, CaseKey key, Dossier dossier) {
    Set<ChipNumber> chips = Set.copyOf(dossier.animal().chips());
    boolean isOfAnimal =
        settled.key().anchor() instanceof Anchor.Chip chip && chips.contains(chip.number());
    return isOfAnimal && settled.key().rule().equals(key.rule())
        || isOfAnimal && settled.says() instanceof MistakenNumber
        || settled.says() instanceof OfPeople pair && isOfContacts(pair, dossier);
  }

  /** Whether both are among those whom the keeper's details and the registrations name. */
  private static boolean isOfContacts(OfPeople pair, Dossier dossier) {
    Set<ContactRef> contacts =
        Stream.concat(
                dossier.custody().versions().all().stream().map(version -> version.who()),
                dossier.live().stream().map(registration -> registration.primary()))
            .flatMap(who -> who.person().stream())
            .map(person -> person.reference())
            .collect(Collectors.toSet());
    return contacts.contains(pair.one().reference()) && contacts.contains(pair.other().reference());
  }

  private String line(Settled settled) {
    return "%s %s, by %s: \"%s\"%s"
        .formatted(
            settled.day(), says(settled.says()), settled.by(), settled.reason(), end(settled));
  }

  private String end(Settled settled) {
    String word = settlements.isStanding(settled) ? "; until " : "; it ended on ";
    return settled.until().map(day -> word + day).orElse("");
  }

  private static String says(Settlement says) {
    if (says instanceof OfPeople pair) {
      return "the two contacts are " + words(pair.relation());
    }
    if (says instanceof MistakenNumber mistaken) {
      return "record %s of source %s has %s by mistake: what it says of that number is left out"
          .formatted(mistaken.record(), mistaken.source(), mistaken.number());
    }
    if (says instanceof Settlement.ForLater) {
      return "put off";
    }
    return says instanceof Settlement.OneAnimal
        ? "the records describe one animal"
        : "right as it is, while custodian and registrations stay";
  }

  private static String words(Settlement.Relation relation) {
    return switch (relation) {
      case SAME_PERSON -> "the same person";
      case SAME_HOUSEHOLD -> "of the same household";
      case DIFFERENT_PEOPLE -> "different people";
    };
  }
}
