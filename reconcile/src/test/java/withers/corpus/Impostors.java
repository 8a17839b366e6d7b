package withers.corpus;

import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Makes strangers who share one thing with somebody: a street, a number, nearly a name. */
final class Impostors {
  private final Population population;

  Impostors(Population population) {
    this.population = population;
  }

  /** Moved in after, or out before: another person at the same address. */
  Person tenant(Person person, Dice dice) {
    return population.strangerNear(person, dice).livingAt(person.home());
  }

  /** The same person under one of the commonest names of the language. */
  Person commonlyNamed(Person person, Dice dice) {
    Culture culture = person.culture();
    Name given = dice.byRank(head(culture.given(person.female())));
    Name family = culture.formOf(dice.byRank(head(culture.families())), person.female());
    Person common = person.named(List.of(given), List.of(family));
    return common.mailedAt(Population.email(common, dice));
  }

  private static List<Name> head(List<Name> names) {
    return names.subList(0, Math.min(names.size(), 8));
  }

  /** Behind another door of the building. */
  Person neighbour(Person person, Dice dice) {
    String flat = String.valueOf(11 + dice.below(20));
    return population.strangerNear(person, dice).livingAt(person.home().flat(flat));
  }

  /** The landline has passed to somebody else, or belongs to an office. */
  Person heirOfLandline(Person person, Dice dice) {
    Person other = population.strangerNear(person, dice);
    return landline(person).map(phone -> other.calledOn(List.of(phone))).orElse(other);
  }

  private static Optional<Phone> landline(Person person) {
    return person.phones().stream().filter(phone -> !phone.mobile()).findFirst();
  }

  Person sameStreetAndGiven(Person person, Dice dice) {
    Person other = population.strangerNear(person, dice);
    Home home = person.home();
    int number = home.number() + 1 + dice.below(60);
    Person near = other.livingAt(new Home(home.place(), home.town(), home.street(), number, ""));
    List<Name> given = person.given().subList(0, 1);
    return near.namedLike(person, given, near.family(), dice);
  }

  /** Another villager of the same street and postcode, with the village's commonest names. */
  Person villager(Person person, Dice dice) {
    Home home = person.home();
    Person other = population.strangerNear(person, dice);
    Home near = new Home(home.place(), home.town(), home.street(), 31 + dice.below(20), "");
    List<Name> families = person.culture().families();
    Name family = person.culture().formOf(dice.byRank(families), other.female());
    return other.livingAt(near).named(other.given(), List.of(family));
  }

  Person inVillage(Person person, Dice dice) {
    Place place = person.home().place();
    int number = 1 + dice.below(30);
    return person.livingAt(new Home(place, place.village(dice), place.street(dice), number, ""));
  }

  /** Somebody with the same first name, and a family name that is another one by one letter. */
  Person nearlyNamed(Person person, Dice dice) {
    String written = person.family().get(0).spelled(person.spelling());
    String near = withOtherLetter(written, dice);
    Name family = new Name(Collections.nCopies(person.spelling() + 1, near));
    List<Name> given = person.given().subList(0, 1);
    return population.strangerNear(person, dice).namedLike(person, given, List.of(family), dice);
  }

  private static String withOtherLetter(String name, Dice dice) {
    int at = dice.below(name.length());
    String letter = String.valueOf((char) ('a' + dice.below(26)));
    String fitting = at == 0 ? letter.toUpperCase(Locale.ROOT) : letter;
    String near = name.substring(0, at) + fitting + name.substring(at + 1);
    return near.equals(name) ? withOtherLetter(name, dice) : near;
  }
}
