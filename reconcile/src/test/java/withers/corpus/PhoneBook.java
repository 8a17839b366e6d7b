package withers.corpus;

import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** Makes numbers in the ranges of phones.txt. */
final class PhoneBook {
  private static final List<Range> RANGES =
      Lines.of("phones.txt").stream().map(Range::read).toList();

  /** Countries without numbers for fiction, and where their people have theirs. */
  private static final Map<String, String> ABROAD =
      Map.of("ES", "FR", "PT", "FR", "IT", "FR", "NL", "DE", "PL", "DE", "IE", "GB");

  private record Range(
      String country,
      String code,
      String trunk,
      String kind,
      List<String> areas,
      List<String> locals,
      int free) {

    static Range read(String line) {
      String[] words = line.split(" ");
      String trunk = words[2].equals("-") ? "" : words[2];
      return new Range(
          words[0],
          words[1],
          trunk,
          words[3],
          List.of(words[4].split(",")),
          List.of(words[5].split(",")),
          Integer.parseInt(words[6]));
    }

    boolean serves(String country, boolean mobile) {
      return this.country.equals(country)
          && (kind.equals("any") || kind.equals(mobile ? "mobile" : "land"));
    }

    Phone number(boolean mobile, Dice dice) {
      StringBuilder local = new StringBuilder(dice.one(locals));
      IntStream.range(0, free).forEach(i -> local.append(dice.below(10)));
      return new Phone(country, code, trunk, mobile, dice.one(areas), local.toString(), free);
    }
  }

  private PhoneBook() {}

  /** A number of that country, or of a neighbour if none is kept for fiction there. */
  static Phone number(String country, boolean mobile, Dice dice) {
    String served = ABROAD.getOrDefault(country, country);
    List<Range> fitting = RANGES.stream().filter(range -> range.serves(served, mobile)).toList();
    return dice.one(fitting).number(mobile, dice);
  }
}
