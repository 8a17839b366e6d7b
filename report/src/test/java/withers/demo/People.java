package withers.demo;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** The people of the coast, each a pure function of the seed and a number. */
final class People {

  /** Town and the letters of its postcode, both invented. */
  private record Town(String name, String letters) {}

  private static final List<Town> TOWNS =
      List.of(
          new Town("Vendlemouth", "VM"),
          new Town("Vendlemouth", "VM"),
          new Town("Vendlemouth", "VM"),
          new Town("Corvelsea", "CS"),
          new Town("Corvelsea", "CS"),
          new Town("Pellerwick", "PW"),
          new Town("Pellerwick", "PW"),
          new Town("Garrowness", "GN"),
          new Town("Hathersand", "HS"),
          new Town("Skarnholme", "SK"),
          new Town("Ulverscar", "UV"),
          new Town("Nethersay", "NS"),
          new Town("Brackensay", "BR"),
          new Town("Tollbarrow", "TB"));

  /**
   * Area codes of the North American plan; 555-0100 to 555-0199 is reserved for fiction in each.
   */
  private static final List<Integer> AREAS =
      List.of(
          201, 202, 203, 205, 206, 207, 208, 209, 210, 212, 213, 214, 215, 216, 217, 218, 219, 224,
          225, 228, 229, 231, 234, 239, 240, 248, 251, 252, 253, 254, 256, 260, 262, 267, 269, 270,
          276, 281, 301, 302, 303, 304, 305, 307, 308, 309, 310, 312, 313, 314, 315, 316, 317, 318,
          319, 320, 321, 323, 325, 330, 334, 336, 337, 339, 347, 351, 352, 360, 361, 386, 401, 402,
          404, 405, 406, 407, 408, 409, 410, 412);

  private static final int FICTIONAL_LINES = 100;
  private static final Pattern NO_LETTERS = Pattern.compile("[^A-Za-z.]");

  private final long seed;

  People(long seed) {
    this.seed = seed;
  }

  /** The person of that number. */
  Person person(int number) {
    Dice dice = Dice.of(seed, "person", number);
    String given = dice.pick(Names.GIVEN);
    String family = dice.pick(Names.FAMILY);
    Town town = dice.pick(TOWNS);
    return new Person(
        Integer.toString(number),
        given,
        family,
        phone(2 * number),
        email(given, family, number),
        (1 + dice.below(140)) + " " + dice.pick(Names.STREETS),
        town.letters + " " + (100 + dice.below(800)),
        town.name);
  }

  /**
   * Who shares the person's home and phone, under another given name, perhaps another family name.
   */
  Person partner(Person person) {
    Dice dice = Dice.of(seed, "partner", person.id().hashCode());
    int drawn = dice.below(Names.GIVEN.size() - 1);
    String given = Names.GIVEN.get(drawn < own(person) ? drawn : drawn + 1);
    String family = dice.permille(500) ? person.family() : dice.pick(Names.FAMILY);
    return person.named(given, family).withEmail("");
  }

  private static int own(Person person) {
    return Names.GIVEN.indexOf(person.given());
  }

  /** Where the person lives after a move, with a new phone. */
  Person moved(Person person) {
    Person elsewhere = person(1_000_000 + Integer.parseInt(person.id()));
    return person.movedTo(elsewhere).withPhone(phone(2 * Integer.parseInt(person.id()) + 1));
  }

  /** A number that rings nowhere: +1 AAA 555 01xx. */
  static String phone(int number) {
    int area = AREAS.get(number / FICTIONAL_LINES % AREAS.size());
    return "%d-555-01%02d".formatted(area, number % FICTIONAL_LINES);
  }

  private static String email(String given, String family, int number) {
    String plain = Normalizer.normalize(given + "." + family, Normalizer.Form.NFD);
    String ascii = NO_LETTERS.matcher(plain).replaceAll("").toLowerCase(Locale.ROOT);
    return ascii + number + "@example.org";
  }
}
