package withers.matching.form;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * What one piece of an address says: a street with its number, a unit, or the name of a house.
 *
 * @param words what is left when number and unit are taken out
 * @param number the house's number, or empty
 * @param unit the flat's, or empty
 * @param box whether it is a post office box
 */
record AddressLine(List<Token> words, String number, String unit, boolean box) {
  private static final Pattern NUMBER = Pattern.compile("\\d{1,5}[a-z]{0,2}");
  private static final Pattern UNIT_IN_ONE = Pattern.compile("(?:u|apt|flat|fl|unit|no)\\d+[a-z]?");
  private static final Pattern ORDINAL = Pattern.compile("\\d+(?:st|nd|rd|th|er|eme)");
  private static final Pattern LETTER = Pattern.compile("[a-z]");
  private static final Pattern FLOOR = Pattern.compile("\\d+[ºª°].?");
  private static final Pattern ZEROS = Pattern.compile("^0+(?=\\d)");
  private static final Pattern DIGITS = Pattern.compile("\\d+");
  private static final Pattern UNIT = Pattern.compile("\\d{1,5}[a-z]{0,2}|[a-z]\\d{0,4}|\\d+[oa]");

  /** Reads a piece; it is read from left to right. */
  static AddressLine of(List<Token> tokens) {
    return new Reader(tokens).read();
  }

  /** A street is likelier the more of these it has. */
  int certainty() {
    int kind = Street.of(words).kind().isEmpty() ? 0 : 2;
    return words.isEmpty() ? -1 : kind + (number.isEmpty() ? 0 : 3) + (box ? 4 : 0);
  }

  private static final class Reader {
    private final List<Token> tokens;
    private final List<Token> words = new ArrayList<>();
    private final List<String> units = new ArrayList<>();
    private String number = "";
    private boolean box;

    Reader(List<Token> tokens) {
      this.tokens = tokens;
    }

    AddressLine read() {
      int at = isFloor() ? behind(0) : boxed();
      while (at < tokens.size()) {
        at += step(at);
      }
      takeLastNumber();
      return new AddressLine(List.copyOf(words), number, String.join("", units), box);
    }

    /** {@code 3º B} in a piece of its own. */
    private boolean isFloor() {
      return !tokens.isEmpty()
          && isFloor(tokens.get(0))
          && tokens.stream()
              .allMatch(token -> isUnit(token) || AddressWords.UNITS.has(token.text()));
    }

    private static boolean isFloor(Token token) {
      return startsWithDigit(token.written()) && FLOOR.matcher(token.written()).matches();
    }

    private static boolean startsWithDigit(String text) {
      return text.charAt(0) >= '0' && text.charAt(0) <= '9';
    }

    private static boolean hasDigit(String text) {
      return text.chars().anyMatch(c -> c >= '0' && c <= '9');
    }

    private static boolean isUnit(Token token) {
      return UNIT.matcher(token.text()).matches();
    }

    private int boxed() {
      int length = AddressWords.BOXES.run(tokens, 0);
      box = length > 0 && length < tokens.size() && isNumber(tokens.get(tokens.size() - 1));
      if (box) {
        words.add(new Token("box", "box", false));
      }
      return box ? length : 0;
    }

    /** How many tokens were taken. */
    private int step(int at) {
      Token token = tokens.get(at);
      if (token.isSign() && !token.is('#')) {
        return 1;
      }
      int unit = unit(at);
      if (unit > 0) {
        return unit;
      }
      if (AddressWords.NUMBER.has(token.text()) && isNumberAt(at + 1) && number.isEmpty()) {
        return 1;
      }
      return isNumber(token) && mayBeNumber(at) ? number(at) : word(token);
    }

    private int word(Token token) {
      words.add(token);
      return 1;
    }

    /** {@code Flat 4}, {@code Apt. 3b}, {@code #4}, {@code U4}, {@code 4th floor}. */
    private int unit(int at) {
      String text = tokens.get(at).text();
      if (hasDigit(text) && UNIT_IN_ONE.matcher(text).matches()) {
        units.add(text.replaceFirst("^[a-z]+", ""));
        return 1;
      }
      int length = AddressWords.UNITS.run(tokens, at);
      boolean weak = text.length() < 3 && !tokens.get(at).is('#');
      if (length == 0 || weak && number.isEmpty() && !words.isEmpty()) {
        return 0;
      }
      int next = at + length;
      while (next < tokens.size() && AddressWords.NUMBER.has(tokens.get(next).text())) {
        next++;
      }
      if (next < tokens.size() && UNIT.matcher(tokens.get(next).text()).matches()) {
        units.add(tokens.get(next).text());
        return next + 1 - at;
      }
      return number.isEmpty() || words.isEmpty() ? 0 : length;
    }

    private boolean isNumberAt(int at) {
      return at < tokens.size() && isNumber(tokens.get(at));
    }

    private static boolean isNumber(Token token) {
      return startsWithDigit(token.text())
          && NUMBER.matcher(token.text()).matches()
          && !ORDINAL.matcher(token.text()).matches()
          && !isFloor(token);
    }

    /** The first number before the street, or one behind it. */
    private boolean mayBeNumber(int at) {
      return number.isEmpty() && (words.isEmpty() || !isFollowedByWord(at));
    }

    private boolean isFollowedByWord(int at) {
      int next = at + 1;
      return next < tokens.size()
          && !tokens.get(next).isSign()
          && !tokens.get(next).joined()
          && tokens.get(next).text().length() > 2
          && AddressWords.UNITS.run(tokens, next) == 0
          && !AddressWords.SUFFIXES.has(tokens.get(next).text())
          && !isNumber(tokens.get(next));
    }

    /** A number with all that belongs to it: 12-14, 12 a, 12 bis, 2/7, 12, 3º B. */
    private int number(int at) {
      number = withoutZeros(tokens.get(at).text());
      int next = at + 1;
      boolean before = words.isEmpty();
      if (isAt(next, '/') && isNumberAt(next + 1)) {
        return slash(at, before);
      }
      if (isNumberAt(next) && tokens.get(next).joined()) {
        number += "-" + withoutZeros(tokens.get(next).text());
        return 2;
      }
      if (next < tokens.size() && isSuffix(next)) {
        number += tokens.get(next).text();
        return 2;
      }
      return 1 + (before ? 0 : behind(next));
    }

    /** Before the street the unit comes first, behind it the house. */
    private int slash(int at, boolean before) {
      String second = withoutZeros(tokens.get(at + 2).text());
      units.add(before ? number : second);
      number = before ? second : number;
      return 3;
    }

    private boolean isSuffix(int at) {
      String text = tokens.get(at).text();
      boolean last = at == tokens.size() - 1 || tokens.get(at + 1).isSign();
      boolean bare = LETTER.matcher(text).matches() && !tokens.get(at).endsWithFullStop();
      boolean letter = bare && (words.isEmpty() ? !last : last);
      return AddressWords.SUFFIXES.has(text)
          || letter && DIGITS.matcher(number).matches() && !"nsew".contains(text);
    }

    /** Floor and door behind the number, as in Spain. */
    private int behind(int from) {
      int at = from;
      while (at < tokens.size()
          && (isFloor() || AddressWords.UNITS.run(tokens, at) == 0)
          && (isFloor() || tokens.get(at).isSign() || isUnit(tokens.get(at)))) {
        if (!tokens.get(at).isSign() && isUnit(tokens.get(at))) {
          units.add(tokens.get(at).text().replaceFirst("(?<=\\d)[oa]$", ""));
        }
        at++;
      }
      return at - from;
    }

    private boolean isAt(int at, char sign) {
      return at < tokens.size() && tokens.get(at).is(sign);
    }

    private static String withoutZeros(String number) {
      return number.startsWith("0") ? ZEROS.matcher(number).replaceFirst("") : number;
    }

    /** {@code Straße des 17. Juni 135} has its number last; {@code Calle 50} has none but this. */
    private void takeLastNumber() {
      int last = words.size() - 1;
      if (number.isEmpty() && last > 0 && isNumber(words.get(last))) {
        number = withoutZeros(words.remove(last).text());
      }
    }
  }
}
