package withers.corpus;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/** What happens to addresses. */
final class AddressChanges {
  private static final Map<String, List<String>> SHORT = Spoken.read("abbreviations.txt");

  private AddressChanges() {}

  private static Entry change(Entry entry, UnaryOperator<WrittenAddress> change) {
    return entry.address().map(address -> entry.address(change.apply(address))).orElse(entry);
  }

  /** To another street of the town, or to another town of the country. */
  static Entry moved(Entry entry, Dice dice) {
    Home old = entry.person().home();
    Home anywhere = old.place().home(dice);
    Home fresh =
        dice.chance(50)
            ? anywhere
            : new Home(
                old.place(), old.town(), anywhere.street(), anywhere.number(), anywhere.flat());
    return change(entry, address -> Clerk.address(fresh, dice));
  }

  static Entry abbreviated(Entry entry, Dice dice) {
    return change(entry, address -> address.lines(each(address, line -> abbreviated(line, dice))));
  }

  private static List<String> each(WrittenAddress address, UnaryOperator<String> change) {
    return address.lines().stream().map(change).toList();
  }

  private static String abbreviated(String line, Dice dice) {
    for (String word : SHORT.keySet().stream().sorted().toList()) {
      int at = line.indexOf(word);
      boolean ends = at >= 0 && !isLetter(line, at + word.length());
      if (ends && (at == 0 || !isLetter(line, at - 1) || isJoined(word))) {
        return line.substring(0, at)
            + dice.one(SHORT.get(word))
            + line.substring(at + word.length());
      }
    }
    return line;
  }

  private static boolean isLetter(String line, int at) {
    return at < line.length() && Character.isLetter(line.charAt(at));
  }

  private static boolean isJoined(String word) {
    return Character.isLowerCase(word.charAt(0));
  }

  /** Left out, or written in another place or way. */
  static Entry flat(Entry entry, Dice dice) {
    boolean drop = dice.chance(50);
    return change(
        entry,
        address ->
            address.flat().isEmpty()
                ? address
                : drop ? address.withoutFlat() : address.lines(Clerk.lines(address.home(), dice)));
  }

  /** The number on the other side of the street, or the lines in another order. */
  static Entry reordered(Entry entry, Dice dice) {
    return change(entry, address -> address.lines(reordered(address)));
  }

  private static List<String> reordered(WrittenAddress address) {
    if (address.lines().size() > 1) {
      List<String> lines = new ArrayList<>(address.lines());
      Collections.reverse(lines);
      return lines;
    }
    Home home = address.home();
    String line = home.line();
    String other =
        line.startsWith(String.valueOf(home.number()))
            ? home.street() + " " + home.number()
            : home.number() + ", " + home.street();
    return each(address, text -> text.replace(line, other));
  }

  static Entry wrongPostcode(Entry entry, Dice dice) {
    return change(
        entry,
        address -> {
          String code = address.postcode();
          int at = code.length() < 2 ? 0 : code.length() - 1 - dice.below(2);
          boolean digit = !code.isEmpty() && Character.isDigit(code.charAt(at));
          char other = digit ? (char) ('0' + dice.below(10)) : 'X';
          return code.isEmpty()
              ? address
              : address.postcode(code.substring(0, at) + other + code.substring(at + 1));
        });
  }

  static Entry withoutPostcode(Entry entry, Dice dice) {
    return change(entry, address -> address.postcode(""));
  }

  static Entry townOnly(Entry entry, Dice dice) {
    return change(entry, WrittenAddress::townOnly);
  }

  static Entry typed(Entry entry, Dice dice) {
    return change(entry, address -> address.lines(each(address, line -> Slips.typed(line, dice))));
  }
}
