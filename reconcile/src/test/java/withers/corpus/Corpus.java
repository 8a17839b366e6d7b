package withers.corpus;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import withers.contact.Contact;

/**
 * Pairs of contacts with known truth, as people and clerks write them. The same mix always gives
 * the same pairs, and any of them can be made without the others. Safe for several threads.
 */
public final class Corpus {

  /** As many pairs as a full judgement takes. */
  public static final int FULL = 200_000;

  private static final int HARMLESS_PERCENT = 35;
  private static final int TRIES = 12;

  private static final List<Corruption> UPHEAVAL =
      List.of(Corruption.NEW_PHONE, Corruption.NEW_EMAIL, Corruption.MOVED);

  private final Mix mix;
  private final Population population = new Population();
  private final Relations relations = new Relations(population);
  private final Impostors impostors = new Impostors(population);

  public Corpus(Mix mix) {
    this.mix = mix;
  }

  public Stream<Pair> pairs(int count) {
    return IntStream.range(0, count).mapToObj(this::pair);
  }

  public Pair pair(int index) {
    Dice dice = mix.dice(index);
    Kind kind = dice.weighted(Kind.ALL, one -> one.weight(mix));
    Person person = fitting(kind, population.stranger(dice), dice);
    Entry first = Clerk.entry(person, Filled.ofKeeper(dice), dice);
    Entry second = Clerk.entry(other(kind, person, dice), Filled.ofRegistration(dice), dice);
    List<Corruption> done = new ArrayList<>();
    Entry changed = change(kind, second, done, dice);
    Contact one = Clerk.contact(first);
    Contact other = Clerk.contact(changed);
    return new Pair(one, other, person.country(), kind, done, Left.of(first, changed));
  }

  private Person fitting(Kind kind, Person person, Dice dice) {
    return switch (kind) {
      case NAMESAKE, CHILD_OF_THE_SAME_NAME -> impostors.commonlyNamed(person, dice);
      case VILLAGER -> impostors.inVillage(person, dice);
      default -> person;
    };
  }

  private Person other(Kind kind, Person person, Dice dice) {
    Person other = related(kind, person, dice);
    while (meetsByChance(kind, person, other)) {
      other = related(kind, person, dice);
    }
    return other;
  }

  private Person related(Kind kind, Person person, Dice dice) {
    return switch (kind) {
      case SAME_PERSON, ONLY_GIVEN_NAME_LEFT -> person;
      case PARTNER -> relations.partner(person, dice);
      case RELATIVE -> relations.relative(person, dice);
      case CHILD_OF_THE_SAME_NAME -> relations.child(person, dice);
      case TWIN -> relations.twin(person, dice);
      case HOUSEMATE -> relations.housemate(person, dice);
      case STRANGER -> population.strangerNear(person, dice);
      case SAME_FAMILY_NAME -> relations.sibling(person, dice);
      case NAMESAKE -> relations.namesake(person, dice);
      case SAME_ADDRESS -> impostors.tenant(person, dice);
      case NEIGHBOUR -> impostors.neighbour(person, dice);
      case SAME_LANDLINE -> impostors.heirOfLandline(person, dice);
      case NEARLY_NAMED -> impostors.nearlyNamed(person, dice);
      case SAME_GIVEN_NAME_AND_STREET -> impostors.sameStreetAndGiven(person, dice);
      case VILLAGER -> impostors.villager(person, dice);
    };
  }

  /**
   * The ranges kept for fiction are small: nobody shares a mobile, a mailbox or a house by chance.
   */
  private static boolean meetsByChance(Kind kind, Person person, Person other) {
    if (kind.truth() == Truth.SAME_PERSON) {
      return false;
    }
    Stream<Phone> own = person.phones().stream().filter(Phone::mobile);
    boolean apart = kind.truth() == Truth.DIFFERENT && kind != Kind.SAME_ADDRESS;
    return !Collections.disjoint(own.toList(), other.phones())
        || person.email().equals(other.email())
        || apart && person.home().equals(other.home());
  }

  private Entry change(Kind kind, Entry entry, List<Corruption> done, Dice dice) {
    if (kind == Kind.ONLY_GIVEN_NAME_LEFT) {
      done.add(Corruption.MARRIED);
      return all(UPHEAVAL, FamilyNames.renamed(entry, dice), done, dice);
    }
    boolean same = kind == Kind.SAME_PERSON;
    int wanted = same ? mix.changes(dice) : dice.chance(HARMLESS_PERCENT) ? 1 : 0;
    List<Corruption> possible = same ? Corruption.ALL : Corruption.HARMLESS;
    Entry changed = entry;
    for (int tries = 0; done.size() < wanted && tries < TRIES; tries++) {
      Corruption next = dice.weighted(possible, one -> one.weight(mix));
      changed = done.contains(next) ? changed : applied(next, changed, done, dice);
    }
    return changed;
  }

  private static Entry all(List<Corruption> all, Entry entry, List<Corruption> done, Dice dice) {
    Entry changed = entry;
    for (Corruption next : all) {
      changed = applied(next, changed, done, dice);
    }
    return changed;
  }

  private static Entry applied(Corruption next, Entry entry, List<Corruption> done, Dice dice) {
    Entry changed = next.apply(entry, dice);
    if (!changed.equals(entry)) {
      done.add(next);
    }
    return changed;
  }
}
