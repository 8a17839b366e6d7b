package withers.rule;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import withers.chip.ChipNumber.Kind;
import withers.contact.ContactRef;
import withers.contacts.People;
import withers.custody.Cast;
import withers.custody.Parties;
import withers.fact.Fact;
import withers.fact.Party;
import withers.history.History;
import withers.history.Statement;
import withers.matching.Verdict;
import withers.organisation.Period;
import withers.registration.Registries;

/**
 * Sees at a glance that there is nothing to say of an animal, as of most: it stands on one number
 * that every scanner reads, and whoever has it is whom every registration names. It asks the few
 * things that decide this. Where it is not sure the rules are asked: it says what they would say,
 * only sooner. Safe for several threads when the vault is.
 */
final class Glance {

  private final Registries registries;
  private final Currentness current;
  private final Cast cast;
  private final People people;
  private final LocalDate asOf;

  /**
   * By what registries tell.
   *
   * @param people who tell of the people whom it asks about
   */
  Glance(Registries registries, People people) {
    this.registries = registries;
    this.cast = registries.cast();
    this.current = Currentness.of(registries.directory(), cast.sources());
    this.people = people;
    this.asOf = cast.sources().scope().asOf();
  }

  /** Looks at an animal of which nothing is said but under this number. */
  Sight look(History history, Seen seen) {
    if (history.chip().kind() != Kind.ISO || seen.isUnusual() || isSpecial(history)) {
      return Sight.UNSURE;
    }
    if (seen.isOfRegistriesOnly()) {
      return isRegistered(seen) ? Sight.STRAY : Sight.UNSURE;
    }
    return !isWaiting(seen) && !mayBeOverdue(seen) && isInOrder(history, seen)
        ? Sight.CLEAR
        : Sight.UNSURE;
  }

  /** Whether nothing may be told of it, or somebody settled something about its people. */
  private boolean isSpecial(History history) {
    return cast.discretion().covers(history)
        || !cast.settlements().relations().isNone()
            && history.statements().stream().anyMatch(this::isSettled);
  }

  private boolean isSettled(Statement statement) {
    return Parties.of(statement.fact())
        .anyMatch(party -> cast.settlements().relations().concern(statement.source(), party));
  }

  private boolean isWaiting(Seen seen) {
    LocalDate taken = seen.handovers().takenIn();
    return !taken.isBefore(asOf.minusDays(FoundWaiting.DAYS))
        && seen.handovers().settled().isBefore(taken);
  }

  private boolean mayBeOverdue(Seen seen) {
    for (Statement visit : seen.visits()) {
      if (mayBeOverdue(visit, seen)) {
        return true;
      }
    }
    return false;
  }

  private boolean mayBeOverdue(Statement visit, Seen seen) {
    return !visit.day().isBefore(asOf.minusDays(ScanOverdue.VISIT_DAYS))
        && ScanOverdue.notesScans(visit, registries)
        && seen.read().isBefore(ScanOverdue.readFrom(visit, registries));
  }

  /**
   * Whoever has it is registered, or is an organisation; or nobody has it, and it is registered.
   */
  private boolean isInOrder(History history, Seen seen) {
    if (!seen.handovers().isLastForSure(registries.periods().handoverWindowDays())) {
      return false;
    }
    Optional<Statement> start = Optional.ofNullable(seen.handovers().last()).or(seen::firstVisit);
    return start.isEmpty() ? isRegistered(seen) : isInOrder(start.get(), history, seen);
  }

  private boolean isInOrder(Statement start, History history, Seen seen) {
    Party holder = holder(start.fact());
    if (holder instanceof Party.Contact contact) {
      return people.isPerson(contact.reference())
          && new Kept(start, contact, history, seen).isRight();
    }
    return !(holder instanceof Party.Unstated)
        && seen.visits().stream().noneMatch(visit -> visit.day().isAfter(start.day()))
        && isUndisputed(seen);
  }

  private static Party holder(Fact start) {
    return start instanceof Fact.HandedOver handover
        ? handover.receiver()
        : ((Fact.Attended) start).client();
  }

  /** Whether it is, with people, and they are not different ones. */
  private boolean isRegistered(Seen seen) {
    return !seen.registrations().isNone() && isUndisputed(seen);
  }

  private boolean isUndisputed(Seen seen) {
    List<ContactRef> primaries = seen.registrations().primaries();
    if (!seen.registrations().areAllOfContacts()) {
      return false;
    }
    for (int i = 0; i < primaries.size(); i++) {
      if (!people.isPerson(primaries.get(i)) || isAnother(primaries.get(i), primaries, i)) {
        return false;
      }
    }
    return true;
  }

  /** Whether it is somebody else than one of the first so many. */
  private boolean isAnother(ContactRef one, List<ContactRef> primaries, int first) {
    for (int i = 0; i < first; i++) {
      if (areOthers(one, primaries.get(i))) {
        return true;
      }
    }
    return false;
  }

  private boolean areOthers(ContactRef one, ContactRef other) {
    return people.verdict(one, other) == Verdict.DIFFERENT;
  }

  /** An animal that a person has. */
  private final class Kept {
    private final Statement start;
    private final Party.Contact keeper;
    private final History history;
    private final Seen seen;

    /**
     * Of an animal.
     *
     * @param start what says who has it
     * @param keeper as that names the person
     */
    Kept(Statement start, Party.Contact keeper, History history, Seen seen) {
      this.history = history;
      this.start = start;
      this.keeper = keeper;
      this.seen = seen;
    }

    /** Every live registration leads to the keeper, in every version; and all are new enough. */
    boolean isRight() {
      return !seen.registrations().isNone()
          && isUndisputed(seen)
          && isNamedBetter()
          && isRegistered(keeper.reference())
          && areAll(seen.visits(), this::isByKeeper)
          && areAll(history.statements(), this::isOfKeeperRight)
          && current.isWhereAsked(history.chip(), seen.registrations().registries())
          && current.isCurrent(history.chip(), seen.speaking(), newEnough());
    }

    /** A loop: streams of a few statements cost more than what is asked of them. */
    private static boolean areAll(List<Statement> statements, Predicate<Statement> condition) {
      for (Statement statement : statements) {
        if (!condition.test(statement)) {
          return false;
        }
      }
      return true;
    }

    private boolean isNamedBetter() {
      for (ContactRef primary : seen.registrations().primaries()) {
        if (!people.isOnlyAName(primary)) {
          return true;
        }
      }
      return false;
    }

    private boolean isRegistered(ContactRef version) {
      for (ContactRef primary : seen.registrations().primaries()) {
        if (!mayStay(primary, version)) {
          return false;
        }
      }
      return true;
    }

    /**
     * Whether nobody has to ask about a registered contact: it is the keeper or of the household,
     * or leads to the keeper though it can't be told who it is.
     */
    private boolean mayStay(ContactRef primary, ContactRef version) {
      return switch (people.verdict(version, primary)) {
        case SAME, SAME_HOUSEHOLD -> true;
        case CANNOT_TELL -> people.areReachedAlike(version, primary);
        case DETAILS_DIFFER, DIFFERENT -> false;
      };
    }

    /** Whoever comes with the animal is the keeper, or came before. */
    private boolean isByKeeper(Statement visit) {
      ContactRef client = ((Party.Contact) holder(visit.fact())).reference();
      return visit.day().isBefore(start.day())
          || client.equals(keeper.reference())
          || people.isPerson(client)
              && people.verdict(keeper.reference(), client) == Verdict.SAME
              && isRegistered(client);
    }

    /** A source's client is one person, however often the contact was written anew. */
    private boolean isOfKeeperRight(Statement statement) {
      return keeper.clientId().isEmpty()
          || !statement.source().equals(start.source())
          || Parties.of(statement.fact()).allMatch(this::isOfKeeperRight);
    }

    private boolean isOfKeeperRight(Party party) {
      return !(party instanceof Party.Contact contact)
          || !contact.clientId().equals(keeper.clientId())
          || isRegistered(contact.reference());
    }

    private LocalDate newEnough() {
      int grace = registries.periods().days(Period.GRACE, cast.organisation(start));
      LocalDate lastChange = Seen.later(seen.changed(), start.firstStated());
      return Seen.later(start.day().plusDays(grace), lastChange.minusDays(Registries.DAYS_APART));
    }
  }
}
