package withers.corpus;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Makes people: strangers with the names, numbers and homes of some country. */
final class Population {
  private static final List<String> DOMAINS =
      List.of("example.org", "example.com", "example.net", "mail.example.com", "post.example.org");
  private static final List<String> EMAIL_SHAPES = List.of("g.f", "gf", "f.g", "if", "g_f", "gn");

  private final List<Culture> cultures = Cultures.read();
  private final Map<String, Place> places = Place.read();

  Person stranger(Dice dice) {
    Culture culture = dice.weighted(cultures, Culture::share);
    return stranger(culture, dice.one(culture.countries()), dice);
  }

  /** Somebody of the same country, of the same language more often than not. */
  Person strangerNear(Person other, Dice dice) {
    List<Culture> there =
        cultures.stream().filter(one -> one.countries().contains(other.country())).toList();
    Culture culture = dice.chance(60) ? other.culture() : dice.weighted(there, Culture::share);
    return stranger(culture, other.country(), dice);
  }

  private Person stranger(Culture culture, String country, Dice dice) {
    boolean female = dice.chance(55);
    int spelling = culture.script() && !dice.chance(culture.ownScript()) ? 1 : 0;
    List<Name> given = given(culture, female, dice);
    List<Name> family = family(culture, female, dice);
    Home home = home(country, dice);
    Person person =
        new Person(culture, female, spelling, given, family, dice.chance(80), List.of(), "", home);
    return person.calledOn(phones(country, dice)).mailedAt(email(person, dice));
  }

  Home home(String country, Dice dice) {
    Place place = places.get(country);
    if (place == null) {
      throw new IllegalStateException("No place for country " + country + " in places.txt");
    }
    return place.home(dice);
  }

  List<Name> given(Culture culture, boolean female, Dice dice) {
    List<Name> given = new ArrayList<>(List.of(dice.byRank(culture.given(female))));
    if (dice.chance(culture.habit("single") > 0 ? 0 : 45)) {
      boolean other = culture.middles().isEmpty();
      Name middle = dice.byRank(other ? culture.given(female) : culture.middles());
      given.add(other ? middle : culture.formOf(middle, female));
    }
    return given.stream().distinct().toList();
  }

  private static List<Name> family(Culture culture, boolean female, Dice dice) {
    Name first = culture.formOf(culture.family(dice), female);
    boolean two = dice.chance(Math.max(culture.habit("double"), culture.habit("joins")));
    Name second = culture.formOf(culture.family(dice), female);
    return two && !second.equals(first) ? List.of(first, second) : List.of(first);
  }

  private static List<Phone> phones(String country, Dice dice) {
    Phone mobile = PhoneBook.number(country, true, dice);
    Phone landline = PhoneBook.number(country, false, dice);
    int kind = dice.below(100);
    if (kind < 48) {
      return List.of(mobile);
    }
    if (kind < 76) {
      return List.of(mobile, landline);
    }
    return kind < 90 ? List.of(landline, mobile) : List.of(landline);
  }

  static String email(Person person, Dice dice) {
    String given = letters(person.given().get(0), person);
    String family = letters(person.family().get(0), person);
    String name =
        switch (dice.one(EMAIL_SHAPES)) {
          case "g.f" -> given + "." + family;
          case "gf" -> given + family;
          case "f.g" -> family + "." + given;
          case "if" -> given.substring(0, 1) + family;
          case "g_f" -> given + "_" + family;
          default -> given;
        };
    return name + dice.below(1000) + "@" + dice.one(DOMAINS);
  }

  /** A name in the letters that e-mail addresses have. */
  static String letters(Name name, Person person) {
    String written = name.spelled(person.culture().usualSpelling());
    String plain = Folding.withoutAccents(written).toLowerCase(Locale.ROOT);
    String letters = plain.replaceAll("[^a-z]", "");
    return letters.isEmpty() ? "x" : letters;
  }
}
