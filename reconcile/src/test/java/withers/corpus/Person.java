package withers.corpus;

import java.util.List;

/**
 * An invented person as they are, whatever is written about them.
 *
 * @param spelling which spelling of their names they use
 * @param given first and middle names
 * @param family family names, one or two
 * @param joined whether two family names are joined by a hyphen
 * @param phones own and the household's, the one that they give first
 */
record Person(
    Culture culture,
    boolean female,
    int spelling,
    List<Name> given,
    List<Name> family,
    boolean joined,
    List<Phone> phones,
    String email,
    Home home) {

  Person named(List<Name> otherGiven, List<Name> otherFamily) {
    return new Person(
        culture, female, spelling, otherGiven, otherFamily, joined, phones, email, home);
  }

  Person calledOn(List<Phone> otherPhones) {
    return new Person(culture, female, spelling, given, family, joined, otherPhones, email, home);
  }

  Person livingAt(Home other) {
    return new Person(culture, female, spelling, given, family, joined, phones, email, other);
  }

  Person mailedAt(String other) {
    return new Person(culture, female, spelling, given, family, joined, phones, other, home);
  }

  /**
   * This person with the language, sex and these names of another, and an e-mail address to go with
   * them.
   */
  Person namedLike(Person other, List<Name> otherGiven, List<Name> otherFamily, Dice dice) {
    Person one =
        new Person(
            other.culture,
            other.female,
            other.spelling,
            otherGiven,
            otherFamily,
            other.joined,
            phones,
            email,
            home);
    return one.mailedAt(Population.email(one, dice));
  }

  String country() {
    return home.place().country();
  }
}
