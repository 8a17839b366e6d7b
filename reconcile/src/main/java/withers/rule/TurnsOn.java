package withers.rule;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import withers.cases.Settlement.Client;
import withers.contact.ContactRef;
import withers.custody.Cast;
import withers.custody.Versions.Version;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.OpenQuestion;
import withers.history.Statement;
import withers.id.OrganisationId;
import withers.registration.LiveRegistration;

/** What a finding about an animal turns on, for people to settle. */
public record TurnsOn(Dossier dossier) {

  /**
   * Two people.
   *
   * @param registries those whose registrations name one of them
   */
  public record Pair(Client one, Client other, Set<OrganisationId> registries) {
    public Pair {
      registries = Set.copyOf(registries);
    }

    private Set<ContactRef> references() {
      return Set.of(one.reference(), other.reference());
    }
  }

  /** A person, and the registry that names this one, if one does. */
  private record Named(Client client, Optional<OrganisationId> registry) {}

  /**
   * The pairs of people on which a follow-up or a question turns, each once; none when it turns on
   * others.
   *
   * @param rule its kind, by name
   * @param finding the finding, if it was found
   */
  public List<Pair> pairs(String rule, Optional<Finding> finding) {
    List<Pair> pairs =
        rule.equals(OpenQuestion.WORD) ? withKeeper(live()) : pairs(FindingKind.of(rule), finding);
    Set<Set<ContactRef>> seen = new HashSet<>();
    return pairs.stream().filter(pair -> seen.add(pair.references())).toList();
  }

  private List<Pair> pairs(FindingKind kind, Optional<Finding> finding) {
    return switch (kind) {
      case CONTACT_BEHIND, RECORDS_BEHIND, DETAILS_DIFFER -> withKeeper(live());
      case MISTYPED_REGISTRATION -> withKeeper(finding.map(TurnsOn::registered).orElse(List.of()));
      case CHIPS_DIVERGE -> among((one, other) -> !one.chip().equals(other.chip()));
      case REGISTRIES_DISAGREE -> among((one, other) -> one.chip().equals(other.chip()));
      default -> List.of();
    };
  }

  private List<Pair> withKeeper(List<Named> registered) {
    List<Pair> pairs = new ArrayList<>();
    dossier
        .keeper()
        .map(keeper -> keeper.versions().newest())
        .flatMap(TurnsOn::client)
        .ifPresent(
            keeper ->
                registered.forEach(one -> add(new Named(keeper, Optional.empty()), one, pairs)));
    return pairs;
  }

  private List<Pair> among(BiPredicate<LiveRegistration, LiveRegistration> ofInterest) {
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < dossier.live().size(); i++) {
      for (LiveRegistration other : dossier.live().subList(i + 1, dossier.live().size())) {
        if (ofInterest.test(dossier.live().get(i), other)) {
          Optional<Named> second = named(other);
          named(dossier.live().get(i))
              .ifPresent(one -> second.ifPresent(two -> add(one, two, pairs)));
        }
      }
    }
    return pairs;
  }

  private static void add(Named one, Named other, List<Pair> pairs) {
    if (!one.client.reference().equals(other.client.reference())) {
      Set<OrganisationId> registries = new HashSet<>();
      one.registry.ifPresent(registries::add);
      other.registry.ifPresent(registries::add);
      pairs.add(new Pair(one.client, other.client, registries));
    }
  }

  private List<Named> live() {
    return dossier.live().stream().flatMap(one -> named(one).stream()).toList();
  }

  private static Optional<Named> named(LiveRegistration one) {
    return one.primary()
        .person()
        .map(person -> Cast.client(one.statement(), person))
        .map(client -> new Named(client, Optional.of(one.registry())));
  }

  /** Registrations of another number, too, of which this animal's statements tell nothing. */
  private static List<Named> registered(Finding finding) {
    return finding.registered().stream()
        .flatMap(
            one ->
                one.primary().person().stream()
                    .map(p -> new Client(p.reference(), p.source(), Optional.empty()))
                    .map(client -> new Named(client, Optional.of(one.registry()))))
        .toList();
  }

  private static Optional<Client> client(Version version) {
    return version.who().person().map(person -> Cast.client(version.statement(), person));
  }

  /** Descriptions of one number that contradict each other, in order. */
  public List<Statement> descriptions() {
    return NumberOnTwoAnimals.contradicting(dossier);
  }

  /** What such a description is settled by. */
  public static String digest(Statement description) {
    return NumberOnTwoAnimals.digest(description);
  }
}
