package withers.settled;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import withers.cases.Settled;
import withers.cases.Settlement.Client;
import withers.cases.Settlement.OfPeople;
import withers.cases.Settlement.Relation;
import withers.contact.ContactRef;
import withers.fact.Party;
import withers.id.SourceId;

/**
 * How pairs of people stand to each other, as people found out. Of several answers about one pair
 * the one recorded last counts, even when its end has passed. Immutable.
 */
public final class Relations {

  /** A source's own client. */
  public record ClientOf(SourceId source, String clientId) {}

  private final List<Settled> told;
  private final LocalDate asOf;
  private final Set<ClientOf> clients = new HashSet<>();
  private final Set<ContactRef> concerned = new HashSet<>();
  private final Map<ContactRef, Set<ClientOf>> versions;

  private Relations(List<Settled> told, LocalDate asOf, Map<ContactRef, Set<ClientOf>> versions) {
    this.told = told;
    this.asOf = asOf;
    this.versions = versions;
    this.concerned.addAll(versions.keySet());
    told.stream().flatMap(Relations::both).forEach(this::index);
  }

  private void index(Client client) {
    concerned.add(client.reference());
    clientOf(client).ifPresent(clients::add);
  }

  /**
   * Those that these settle.
   *
   * @param counting what counts, in the order of recording
   */
  static Relations of(List<Settled> counting, LocalDate asOf) {
    return new Relations(
        counting.stream().filter(one -> one.says() instanceof OfPeople).toList(), asOf, Map.of());
  }

  /** Clients of sources of whom all versions are meant. */
  public Set<ClientOf> clients() {
    return Set.copyOf(clients);
  }

  /**
   * The same, with other contacts that the sources know as these clients.
   *
   * @param known which of the clients a contact is
   */
  public Relations withVersions(Map<ContactRef, Set<ClientOf>> known) {
    return known.isEmpty() ? this : new Relations(told, asOf, new HashMap<>(known));
  }

  /** Whether nothing was settled about people. */
  public boolean isNone() {
    return told.isEmpty();
  }

  /** Whether something was settled about a party, as a source names it. */
  public boolean concern(SourceId source, Party party) {
    return party instanceof Party.Contact contact
        && (concerned.contains(contact.reference())
            || contact
                .clientId()
                .filter(id -> clients.contains(new ClientOf(source, id)))
                .isPresent());
  }

  /** How two stand to each other; empty when nobody settled it. */
  public Optional<Relation> between(ContactRef one, ContactRef other) {
    if (!concerned.contains(one) || !concerned.contains(other)) {
      return Optional.empty();
    }
    return told.stream()
        .filter(settled -> isOf(pair(settled), one, other))
        .reduce((earlier, later) -> later)
        .filter(settled -> !settled.isOver(asOf))
        .map(settled -> pair(settled).relation());
  }

  /** A number for each that somebody is said to be the same person as, alike for both. */
  public LongStream signs(ContactRef reference) {
    if (!concerned.contains(reference)) {
      return LongStream.empty();
    }
    return told.stream()
        .filter(settled -> pair(settled).relation() == Relation.SAME_PERSON)
        .filter(settled -> both(settled).anyMatch(client -> isMeant(client, reference)))
        .mapToLong(Settled::number);
  }

  private boolean isOf(OfPeople pair, ContactRef one, ContactRef other) {
    return isMeant(pair.one(), one) && isMeant(pair.other(), other)
        || isMeant(pair.one(), other) && isMeant(pair.other(), one);
  }

  private boolean isMeant(Client client, ContactRef reference) {
    return client.reference().equals(reference)
        || clientOf(client)
            .filter(versions.getOrDefault(reference, Set.of())::contains)
            .isPresent();
  }

  private static Optional<ClientOf> clientOf(Client client) {
    return client.clientId().map(id -> new ClientOf(client.source(), id));
  }

  private static Stream<Client> both(Settled settled) {
    return Stream.of(pair(settled).one(), pair(settled).other());
  }

  private static OfPeople pair(Settled settled) {
    return (OfPeople) settled.says();
  }
}
