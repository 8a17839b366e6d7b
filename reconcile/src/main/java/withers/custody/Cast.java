package withers.custody;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import withers.cases.Settlement.Client;
import withers.cases.Settlement.Relation;
import withers.contact.ContactRef;
import withers.contacts.People;
import withers.fact.Fact;
import withers.fact.Party;
import withers.finding.Who;
import withers.history.Animal;
import withers.history.History;
import withers.history.Sources;
import withers.history.Stated;
import withers.history.Statement;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.matching.Verdict;
import withers.settled.Relations.ClientOf;
import withers.settled.Settlements;

/**
 * Who the parties of statements are, and how they stand to each other. Safe for several threads.
 *
 * @param settlements what people settled: it outranks what is compared
 * @param discretion what nothing is told of
 */
public record Cast(People people, Sources sources, Settlements settlements, Discretion discretion) {

  /** Of whom everything may be told. */
  public Cast(People people, Sources sources, Settlements settlements) {
    this(people, sources, settlements, Discretion.NONE);
  }

  /** Of whom nothing was settled. */
  public Cast(People people, Sources sources) {
    this(people, sources, Settlements.NONE);
  }

  /** The same for somebody who can wait for people to be looked up together. */
  public Cast patient() {
    return new Cast(people.patient(), sources, settlements, discretion);
  }

  /** The same for one animal, whose statements tell which contacts are versions of one client. */
  public Cast about(Animal animal) {
    Set<ClientOf> clients = settlements.relations().clients();
    if (clients.isEmpty()) {
      return this;
    }
    Map<ContactRef, Set<ClientOf>> versions = new HashMap<>();
    for (Statement statement : animal.statements()) {
      Parties.of(statement.fact())
          .forEach(party -> addVersion(party, statement.source(), clients, versions));
    }
    return new Cast(people, sources, settlements.withVersions(versions), discretion);
  }

  private static void addVersion(
      Party party,
      SourceId source,
      Set<ClientOf> clients,
      Map<ContactRef, Set<ClientOf>> versions) {
    if (party instanceof Party.Contact contact) {
      contact
          .clientId()
          .map(id -> new ClientOf(source, id))
          .filter(clients::contains)
          .ifPresent(
              client ->
                  versions.computeIfAbsent(contact.reference(), r -> new HashSet<>()).add(client));
    }
  }

  /** Looks up together everybody whom these animals' statements name, before they are judged. */
  public void prepare(Collection<History> histories) {
    Set<ContactRef> asked = new HashSet<>();
    for (History history : histories) {
      for (Statement statement : history.statements()) {
        Parties.forEachAskedAbout(statement.fact(), party -> addReference(party, asked));
      }
    }
    people.prepare(asked);
  }

  /**
   * Whether all that is asked of those whom an animal's statements name, as a rule, was told
   * before: nobody need look them up.
   */
  public boolean isPrepared(History history) {
    for (Statement statement : history.statements()) {
      if (Parties.isSomeAskedAbout(statement.fact(), this::isToBeLookedUp)) {
        return false;
      }
    }
    return true;
  }

  private boolean isToBeLookedUp(Party party) {
    return party instanceof Party.Contact contact && !people.isKept(contact.reference());
  }

  /** Looks up together everybody whom these facts name. */
  public void prepare(Stream<Fact> facts) {
    people.prepare(askedAbout(facts));
  }

  /** The contacts among those whom rules ask about when they judge by these facts. */
  public static Set<ContactRef> askedAbout(Stream<Fact> facts) {
    Set<ContactRef> asked = new HashSet<>();
    facts.forEach(fact -> Parties.forEachAskedAbout(fact, party -> addReference(party, asked)));
    return asked;
  }

  private static void addReference(Party party, Set<ContactRef> references) {
    if (party instanceof Party.Contact contact) {
      references.add(contact.reference());
    }
  }

  private static Stream<ContactRef> reference(Party party) {
    return party instanceof Party.Contact contact ? Stream.of(contact.reference()) : Stream.empty();
  }

  public Who who(Statement statement, Party party) {
    return people.who(party, statement.source(), organisation(statement));
  }

  public Who who(Stated stated, Party party) {
    return people.who(party, stated.source(), organisation(stated));
  }

  /** Everybody whom a statement has the animal with or go to. */
  public Stream<Who> clients(Statement statement) {
    if (statement.fact() instanceof Fact.HandedOver handedOver) {
      return Stream.of(who(statement, handedOver.receiver()));
    }
    return Parties.askedAbout(statement.fact()).map(party -> who(statement, party));
  }

  /** The organisation whose records state it. */
  public OrganisationId organisation(Statement statement) {
    return sources.get(statement.source()).organisation();
  }

  /** The organisation whose records state it. */
  public OrganisationId organisation(Stated stated) {
    return sources.get(stated.source()).organisation();
  }

  /** Whether it is a registry's word: it states it, or answered so when somebody asked. */
  public boolean isRegistrysWord(Statement statement) {
    return isRegistry(statement) || statement.fact() instanceof Fact.LookedUp;
  }

  /** Whether a registry states it. */
  public boolean isRegistry(Statement statement) {
    return sources.get(statement.source()).isRegistry();
  }

  /** A person as a statement names one: with the source's own id of the client, if it tells. */
  public static Client client(Statement statement, Who.Person person) {
    Optional<String> id =
        Parties.of(statement.fact())
            .filter(party -> reference(party).anyMatch(person.reference()::equals))
            .flatMap(party -> ClientId.of(party).stream())
            .findFirst();
    return new Client(person.reference(), statement.source(), id);
  }

  /** The verdict on two: a person's who found out, else what their details say. */
  public Verdict verdict(Who one, Who other) {
    return relation(one, other)
        .map(settled -> told(settled, one, other))
        .orElseGet(() -> people.verdict(one, other));
  }

  /** What somebody settled about two people; one who was forgotten can't be told any more. */
  private Optional<Relation> relation(Who one, Who other) {
    if (one instanceof Who.Person first && other instanceof Who.Person second) {
      return settlements
          .relations()
          .between(first.reference(), second.reference())
          .filter(settled -> people.isKnown(first) && people.isKnown(second));
    }
    return Optional.empty();
  }

  private Verdict told(Relation settled, Who one, Who other) {
    return switch (settled) {
      case SAME_PERSON -> differ(one, other) ? Verdict.DETAILS_DIFFER : Verdict.SAME;
      case SAME_HOUSEHOLD -> Verdict.SAME_HOUSEHOLD;
      case DIFFERENT_PEOPLE -> Verdict.DIFFERENT;
    };
  }

  private boolean differ(Who one, Who other) {
    return people.weigh(one, other).filter(weighing -> !weighing.others().isEmpty()).isPresent();
  }

  /**
   * Signs of a person that follow from what somebody settled: two of whom somebody settled that
   * they are one always have one in common.
   */
  public LongStream toldSigns(Who.Person person) {
    return settlements.relations().signs(person.reference());
  }

  /**
   * Whether both are one organisation, one person, or of one household; nobody agrees with none.
   */
  public boolean agree(Who one, Who other) {
    return isNamed(one) && isNamed(other) && verdict(one, other).isClose();
  }

  /** Whether it is a person whose details are not there any more. */
  public boolean isForgotten(Who who) {
    return who.person().filter(person -> !people.isKnown(person)).isPresent();
  }

  /** Whether records name somebody here, person or organisation. */
  public static boolean isNamed(Who who) {
    return !(who instanceof Who.Nobody);
  }

  /** Whether it is an organisation, in the directory or not. */
  public static boolean isOrganisation(Who who) {
    return who instanceof Who.Organisation || who instanceof Who.Outside;
  }
}
