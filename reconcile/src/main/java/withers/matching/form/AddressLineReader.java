package withers.matching.form;

import java.util.ArrayList;
import java.util.List;

/** Reads one piece of an address from left to right, once. */
final class AddressLineReader {
  private final List<Token> tokens;
  private final List<Token> words = new ArrayList<>();
  private final List<String> units = new ArrayList<>();
  private String number = "";
  private boolean box;

  AddressLineReader(List<Token> tokens) {
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
        && HouseNumbers.isFloor(tokens.get(0))
        && tokens.stream()
            .allMatch(token -> HouseNumbers.isUnit(token) || AddressWords.UNITS.has(token.text()));
  }

  private int boxed() {
    int length = AddressWords.BOXES.run(tokens, 0);
    box =
        length > 0
            && length < tokens.size()
            && HouseNumbers.isNumber(tokens.get(tokens.size() - 1));
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
    return HouseNumbers.isNumber(token) && mayBeNumber(at) ? number(at) : word(token);
  }

  private int word(Token token) {
    words.add(token);
    return 1;
  }

  /** {@code Flat 4}, {@code Apt. 3b}, {@code #4}, {@code U4}, {@code 4th floor}. */
  private int unit(int at) {
    String text = tokens.get(at).text();
    if (HouseNumbers.isUnitInOne(text)) {
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
    if (next < tokens.size() && HouseNumbers.isUnit(tokens.get(next))) {
      units.add(tokens.get(next).text());
      return next + 1 - at;
    }
    return number.isEmpty() || words.isEmpty() ? 0 : length;
  }

  private boolean isNumberAt(int at) {
    return at < tokens.size() && HouseNumbers.isNumber(tokens.get(at));
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
        && !HouseNumbers.isNumber(tokens.get(next));
  }

  /** A number with all that belongs to it: 12-14, 12 a, 12 bis, 2/7, 12, 3º B. */
  private int number(int at) {
    number = HouseNumbers.withoutZeros(tokens.get(at).text());
    int next = at + 1;
    boolean before = words.isEmpty();
    if (isAt(next, '/') && isNumberAt(next + 1)) {
      return slash(at, before);
    }
    if (isNumberAt(next) && tokens.get(next).joined()) {
      number += "-" + HouseNumbers.withoutZeros(tokens.get(next).text());
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
    String second = HouseNumbers.withoutZeros(tokens.get(at + 2).text());
    units.add(before ? number : second);
    number = before ? second : number;
    return 3;
  }

  private boolean isSuffix(int at) {
    String text = tokens.get(at).text();
    boolean last = at == tokens.size() - 1 || tokens.get(at + 1).isSign();
    boolean bare = HouseNumbers.isLetter(text) && !tokens.get(at).endsWithFullStop();
    boolean letter = bare && (words.isEmpty() ? !last : last);
    return AddressWords.SUFFIXES.has(text)
        || letter && HouseNumbers.isDigits(number) && !"nsew".contains(text);
  }

  /** Floor and door behind the number, as in Spain. */
  private int behind(int from) {
    int at = from;
    while (at < tokens.size()
        && (isFloor() || AddressWords.UNITS.run(tokens, at) == 0)
        && (isFloor() || tokens.get(at).isSign() || HouseNumbers.isUnit(tokens.get(at)))) {
      if (!tokens.get(at).isSign() && HouseNumbers.isUnit(tokens.get(at))) {
        units.add(tokens.get(at).text().replaceFirst("(?<=\\d)[oa]$", ""));
      }
      at++;
    }
    return at - from;
  }

  private boolean isAt(int at, char sign) {
    return at < tokens.size() && tokens.get(at).is(sign);
  }

  /** {@code Straße des 17. Juni 135} has its number last; {@code Calle 50} has none but this. */
  private void takeLastNumber() {
    int last = words.size() - 1;
    if (number.isEmpty() && last > 0 && HouseNumbers.isNumber(words.get(last))) {
      number = HouseNumbers.withoutZeros(words.remove(last).text());
    }
  }
}
