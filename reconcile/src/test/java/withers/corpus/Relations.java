package withers.corpus;

import java.util.ArrayList;
import java.util.List;

/**
 * Makes people who have something to do with somebody: who live with them, or only look like them.
 */
final class Relations {
  private final Population population;

  Relations(Population population) {
    this.population = population;
  }

  /** Married or not: the wife has the husband's name, both names or her own. */
  Person partner(Person person, Dice dice) {
    Person other = housemate(person, dice);
    Person partner =
        dice.chance(80) && other.female() == person.female() ? otherSex(other, dice) : other;
    if (dice.chance(person.culture().habit("takes"))) {
      return renamed(partner, familyOf(person, partner.female()));
    }
    return dice.chance(person.culture().habit("joins"))
        ? renamed(
            partner, List.of(familyOf(person, partner.female()).get(0), partner.family().get(0)))
        : partner;
  }

  private Person otherSex(Person one, Dice dice) {
    boolean female = !one.female();
    Person other =
        new Person(
            one.culture(),
            female,
            one.spelling(),
            population.given(one.culture(), female, dice),
            one.family(),
            one.joined(),
            one.phones(),
            one.email(),
            one.home());
    return other.mailedAt(Population.email(other, dice));
  }

  /** Lives there and shares the landline, if there is one. */
  Person housemate(Person person, Dice dice) {
    Person other = population.strangerNear(person, dice).livingAt(person.home());
    return other.calledOn(withLandlineOf(person, other.phones()));
  }

  private static List<Phone> withLandlineOf(Person person, List<Phone> own) {
    List<Phone> phones = new ArrayList<>(own.stream().filter(Phone::mobile).toList());
    person.phones().stream().filter(phone -> !phone.mobile()).forEach(phones::add);
    return phones.isEmpty() ? own : phones;
  }

  /** A grown child, parent, brother or sister under the same roof. */
  Person relative(Person person, Dice dice) {
    Person other = sameLanguage(housemate(person, dice), person, dice);
    return renamed(other, familyOf(person, other.female()));
  }

  /** Father and son, or mother and daughter, with one name. */
  Person child(Person person, Dice dice) {
    Person other = sameLanguage(housemate(person, dice), person, dice);
    List<Name> given = dice.chance(50) ? person.given() : person.given().subList(0, 1);
    return other.namedLike(person, given, person.family(), dice);
  }

  /** Twins are often given names that begin alike. */
  Person twin(Person person, Dice dice) {
    Person other = relative(person, dice);
    String initial = person.given().get(0).key().substring(0, 1);
    List<Name> alike =
        person.culture().given(other.female()).stream()
            .filter(name -> name.key().startsWith(initial) && !name.equals(person.given().get(0)))
            .toList();
    return alike.isEmpty() ? other : other.named(List.of(dice.one(alike)), other.family());
  }

  /** A brother or sister who has left: only the family name is shared. */
  Person sibling(Person person, Dice dice) {
    Person other = sameLanguage(population.strangerNear(person, dice), person, dice);
    return renamed(other, familyOf(person, other.female()));
  }

  /** Somebody else who has the same first and family name. */
  Person namesake(Person person, Dice dice) {
    Person other = population.strangerNear(person, dice);
    List<Name> given = dice.chance(70) ? person.given().subList(0, 1) : person.given();
    return other.namedLike(person, given, person.family(), dice);
  }

  private Person sameLanguage(Person other, Person person, Dice dice) {
    Person same =
        new Person(
            person.culture(),
            other.female(),
            person.spelling(),
            differentGiven(person, other.female(), dice),
            person.family(),
            person.joined(),
            other.phones(),
            other.email(),
            other.home());
    return same.mailedAt(Population.email(same, dice));
  }

  private List<Name> differentGiven(Person person, boolean female, Dice dice) {
    List<Name> given = population.given(person.culture(), female, dice);
    while (given.get(0).equals(person.given().get(0))) {
      given = population.given(person.culture(), female, dice);
    }
    return given;
  }

  private static Person renamed(Person person, List<Name> family) {
    return person.named(person.given(), family.stream().distinct().toList());
  }

  /** Families whose women bear another form of the name (Kowalski, Kowalska) are one family. */
  private static List<Name> familyOf(Person person, boolean female) {
    return person.female() == female
        ? person.family()
        : person.family().stream().map(name -> person.culture().formOf(name, female)).toList();
  }
}
