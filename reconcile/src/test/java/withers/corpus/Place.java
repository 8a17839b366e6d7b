package withers.corpus;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** How addresses of one country look; the lines of places.txt. */
record Place(
    String country,
    String pattern,
    boolean byStreet,
    String streets,
    String line,
    List<String> types,
    List<String> names,
    List<String> flats,
    List<String> towns) {

  private static final String LETTERS = "ABDEFGHJLNPQRSTUWXYZ";
  private static final int FLATS_PERCENT = 30;

  static Map<String, Place> read() {
    Map<String, Place> places = new HashMap<>();
    Map<String, List<String>> open = new HashMap<>();
    for (String line : Lines.of("places.txt")) {
      open.put(line.substring(0, line.indexOf(' ')), Lines.values(line));
      if (line.startsWith("towns")) {
        Place place = of(open);
        places.put(place.country, place);
      }
    }
    return Map.copyOf(places);
  }

  private static Place of(Map<String, List<String>> open) {
    return new Place(
        first(open, "country"),
        String.join(" ", all(open, "postcode")),
        first(open, "scope").equals("street"),
        first(open, "streets"),
        first(open, "line"),
        all(open, "types"),
        all(open, "names"),
        all(open, "flat"),
        all(open, "towns"));
  }

  private static List<String> all(Map<String, List<String>> open, String key) {
    return Objects.requireNonNull(open.get(key), key);
  }

  private static String first(Map<String, List<String>> open, String key) {
    return all(open, key).get(0);
  }

  /** Some home: villages have few and low numbers, so neighbours meet there. */
  Home home(Dice dice) {
    String town = dice.byRank(towns);
    int number = 1 + dice.below(town.startsWith("*") ? 30 : 180);
    String flat = dice.chance(FLATS_PERCENT) ? String.valueOf(1 + dice.below(9)) : "";
    return new Home(this, town, street(dice), number, flat);
  }

  String street(Dice dice) {
    String type = dice.byRank(types);
    String name = dice.one(names);
    return switch (streets) {
      case "before" -> type + " " + name;
      case "joined" -> name + type;
      default -> name + " " + type;
    };
  }

  String village(Dice dice) {
    List<String> villages = new ArrayList<>(towns);
    villages.removeIf(town -> !town.startsWith("*"));
    return dice.one(villages);
  }

  /** The same for the same town, and street where postcodes are finer; one for a village. */
  String postcode(String town, String street) {
    boolean whole = !byStreet || town.startsWith("*");
    Dice dice = new Dice((country + town + (whole ? "" : street)).hashCode());
    StringBuilder code = new StringBuilder();
    pattern.chars().forEach(sign -> code.append(sign((char) sign, dice)));
    return code.toString();
  }

  private static char sign(char pattern, Dice dice) {
    return switch (pattern) {
      case '9' -> (char) ('0' + dice.below(10));
      case 'L' -> LETTERS.charAt(dice.below(LETTERS.length()));
      default -> pattern;
    };
  }
}
