package withers.corpus;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.contact.Contact;
import withers.corpus.Entry.Layout;
import withers.corpus.Entry.WrittenEmail;
import withers.corpus.Entry.WrittenPhone;

/** Writes people down, without mistakes, and makes contacts of what is written. */
final class Clerk {
  private static final List<PhoneFormat> FORMATS = List.of(PhoneFormat.values());

  private Clerk() {}

  static Entry entry(Person person, Filled filled, Dice dice) {
    return new Entry(
        person,
        filled.name ? names(person, dice) : Names.NONE,
        layout(person, dice),
        filled.phone ? phones(person, dice) : List.of(),
        filled.email ? List.of(new WrittenEmail(person.email(), person.email())) : List.of(),
        filled.address ? Optional.of(address(person.home(), dice)) : Optional.empty());
  }

  private static Names names(Person person, Dice dice) {
    int middles = dice.chance(25) ? person.given().size() : 1;
    boolean hyphen = person.culture().habit("double") == 0 && person.joined();
    return Names.NONE
        .given(written(person.given().subList(0, middles), person))
        .family(written(person.family(), person))
        .join(hyphen ? "-" : " ");
  }

  static List<Names.Written> written(List<Name> names, Person person) {
    Stream<Names.Written> written =
        names.stream().map(name -> new Names.Written(name, name.spelled(person.spelling()), true));
    return written.toList();
  }

  private static Layout layout(Person person, Dice dice) {
    if (dice.chance(person.culture().habit("family-first"))) {
      return Layout.FAMILY_FIRST;
    }
    int kind = dice.below(100);
    return kind < 45 ? Layout.COLUMNS : kind < 85 ? Layout.GIVEN_FIRST : Layout.FAMILY_COMMA;
  }

  private static List<WrittenPhone> phones(Person person, Dice dice) {
    int most = dice.chance(45) ? 2 : 1;
    PhoneFormat format = format(dice);
    return person.phones().stream().limit(most).map(phone -> phone(phone, format, person)).toList();
  }

  static PhoneFormat format(Dice dice) {
    return dice.byRank(FORMATS);
  }

  /** The number in this format, or where it could not be read so, in the international one. */
  static WrittenPhone phone(Phone phone, PhoneFormat format, Person person) {
    boolean suits = format.suits(phone, person.country());
    return new WrittenPhone(phone, (suits ? format : PhoneFormat.INTERNATIONAL).write(phone));
  }

  static WrittenAddress address(Home home, Dice dice) {
    return new WrittenAddress(
        home,
        home.building(),
        home.flat(),
        lines(home, dice),
        home.postcode(),
        home.town().replace("*", ""),
        dice.chance(50) ? home.place().country() : "");
  }

  static List<String> lines(Home home, Dice dice) {
    if (home.flat().isEmpty()) {
      return List.of(home.line());
    }
    String flat = dice.one(home.place().flats()).replace("%", home.flat());
    return dice.chance(50)
        ? List.of(home.line(), flat)
        : List.of(dice.chance(50) ? home.line() + ", " + flat : flat + ", " + home.line());
  }

  static Contact contact(Entry entry) {
    String given = entry.names().givenText();
    String family = entry.names().familyText();
    boolean columns = entry.layout().compareTo(Layout.COLUMNS) >= 0;
    boolean swapped = entry.layout() == Layout.COLUMNS_SWAPPED;
    Optional<WrittenAddress> address = entry.address();
    return new Contact(
        columns ? "" : whole(entry.layout(), given, family),
        columns ? (swapped ? family : given) : "",
        columns ? (swapped ? given : family) : "",
        entry.phones().stream().map(WrittenPhone::text).toList(),
        entry.emails().stream().map(WrittenEmail::text).toList(),
        address.map(WrittenAddress::lines).orElse(List.of()),
        address.map(WrittenAddress::postcode).orElse(""),
        address.map(WrittenAddress::town).orElse(""),
        "",
        address.map(WrittenAddress::country).orElse(""));
  }

  private static String whole(Layout layout, String given, String family) {
    if (given.isEmpty() || family.isEmpty()) {
      return given + family;
    }
    return switch (layout) {
      case FAMILY_COMMA -> family + ", " + given;
      case FAMILY_FIRST -> family + " " + given;
      default -> given + " " + family;
    };
  }
}
