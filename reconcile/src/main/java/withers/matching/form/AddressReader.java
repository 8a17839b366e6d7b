package withers.matching.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import withers.contact.Contact;

/** Reads addresses, whatever the order of their lines and parts. */
final class AddressReader {

  /** Postcodes with letters, or with a sign or a space among digits, wherever they stand. */
  private static final Pattern POSTCODE =
      Pattern.compile(
          "(?<![\\p{L}\\p{N}])(?:[A-Z]{1,2}\\d[A-Z\\d]? ?\\d[A-Z]{2}|\\d{4} ?[A-Z]{2}|[A-Z]\\d{2} ?[A-Z\\d]{4}|[A-Z]\\d[A-Z] ?\\d[A-Z]\\d|\\d{2}-\\d{3}|\\d{4}-\\d{3}|\\d{3} \\d{2}|\\d{5}(?:-\\d{4})?)(?![\\p{L}\\p{N}])",
          Pattern.CASE_INSENSITIVE);

  /** Four or five digits before or behind a town, as a piece of its own. */
  private static final Pattern BESIDE_TOWN =
      Pattern.compile("^(?:(?:[A-Z]{1,3}[- ])?(\\d{4,5}) +(\\D+)|(\\D+) (\\d{4,5}))$");

  private static final Pattern COUNTRY_PREFIX = Pattern.compile("^([a-z]{1,3})(?=\\d{4,6}$)");
  private static final Pattern PLUS_FOUR = Pattern.compile("^(\\d{5})-\\d{4}$");
  private static final String BETWEEN_PIECES = ";\n\r|,";
  private static final Pattern PIECE = Pattern.compile("[;\\n\\r|]+|,(?!\\d)");

  private AddressReader() {}

  /** Nothing when no part of an address is stated. */
  static Optional<Address> read(Contact contact) {
    List<String> pieces = new ArrayList<>();
    for (String line : contact.addressLines()) {
      if (mayHavePieces(line)) {
        PIECE.splitAsStream(line).map(String::strip).forEach(pieces::add);
      } else {
        pieces.add(line);
      }
    }
    String postcode = postcode(contact.postcode());
    String town = contact.town();
    if (postcode.isEmpty()) {
      postcode = takePostcode(pieces, town.isEmpty());
    }
    Address address = address(unsaid(pieces, contact), postcode, town, contact.country());
    return isEmpty(address) ? Optional.empty() : Optional.of(address);
  }

  private static boolean mayHavePieces(String line) {
    for (int i = 0; i < line.length(); i++) {
      if (BETWEEN_PIECES.indexOf(line.charAt(i)) >= 0) {
        return true;
      }
    }
    return false;
  }

  private static boolean isEmpty(Address address) {
    return address.street().isEmpty() && address.postcode().isEmpty() && address.town().isEmpty();
  }

  /** Letters and digits; a country before it and the last four of nine digits are left out. */
  static String postcode(String written) {
    boolean plusFour = written.indexOf('-') > 0;
    String plain = plusFour ? PLUS_FOUR.matcher(written.strip()).replaceFirst("$1") : written;
    String code = Fold.word(plain);
    Matcher prefix = COUNTRY_PREFIX.matcher(code);
    return prefix.lookingAt() && AddressWords.COUNTRIES.has(prefix.group(1))
        ? code.substring(prefix.end())
        : code;
  }

  /** Takes a postcode out of the pieces but the first, which may be all there is. */
  private static String takePostcode(List<String> pieces, boolean townToo) {
    for (int i = pieces.size() - 1; i >= 0; i--) {
      String piece = pieces.get(i);
      Matcher beside = BESIDE_TOWN.matcher(piece);
      if (i > 0 && townToo && beside.matches()) {
        boolean first = beside.group(1) != null;
        pieces.set(i, first ? beside.group(2) : beside.group(3));
        return postcode(first ? beside.group(1) : beside.group(4));
      }
      Matcher matcher = POSTCODE.matcher(piece);
      if (matcher.find() && (matcher.start() > 0 || i > 0)) {
        pieces.set(
            i, (piece.substring(0, matcher.start()) + piece.substring(matcher.end())).strip());
        return postcode(matcher.group());
      }
    }
    return "";
  }

  /** The tokens of the pieces that no other field says, too. */
  private static List<List<Token>> unsaid(List<String> pieces, Contact contact) {
    List<List<String>> said =
        List.of(
            words(contact.town()),
            words(contact.postcode()),
            words(contact.region()),
            words(contact.country()));
    List<List<Token>> kept = new ArrayList<>();
    for (String piece : pieces) {
      List<Token> tokens = Token.of(piece);
      if (!piece.isEmpty() && !said.contains(words(tokens))) {
        kept.add(tokens);
      }
    }
    return kept;
  }

  private static List<String> words(String text) {
    return text.isEmpty() ? List.of() : words(Token.of(text));
  }

  private static List<String> words(List<Token> tokens) {
    List<String> words = new ArrayList<>(tokens.size());
    for (Token token : tokens) {
      if (!token.isSign()) {
        String word = Spelling.withoutUmlauts(token.text());
        words.add(AddressWords.LONG.getOrDefault(word, word));
      }
    }
    return words;
  }

  private static Address address(
      List<List<Token>> pieces, String postcode, String town, String country) {
    List<AddressLine> lines = new ArrayList<>();
    pieces.forEach(piece -> lines.add(AddressLine.of(piece)));
    AddressLine street = street(lines);
    String number = number(street, lines);
    String unit = street.unit().isEmpty() ? unit(lines, street) : street.unit();
    List<String> townWords = town.isEmpty() ? lastPiece(pieces, lines, street) : words(town);
    Street name = Street.of(street.words());
    return new Address(
        name.withKind(),
        name.name(),
        name.core(),
        number,
        unit,
        postcode,
        String.join(" ", townWords),
        townWords,
        country);
  }

  private static final AddressLine NO_LINE = new AddressLine(List.of(), "", "", false);

  /** The likeliest piece; of several the first. */
  private static AddressLine street(List<AddressLine> lines) {
    AddressLine best = NO_LINE;
    int most = NO_LINE.certainty();
    for (AddressLine line : lines) {
      int certainty = line.certainty();
      best = certainty > most ? line : best;
      most = Math.max(certainty, most);
    }
    return best;
  }

  /** A number in a piece of its own belongs to the street: {@code 12, rue du Moulin}. */
  private static String number(AddressLine street, List<AddressLine> lines) {
    return !street.number().isEmpty()
        ? street.number()
        : lines.stream()
            .filter(line -> line.words().isEmpty() && !line.number().isEmpty())
            .map(AddressLine::number)
            .findFirst()
            .orElse("");
  }

  private static String unit(List<AddressLine> lines, AddressLine street) {
    return lines.stream()
        .filter(line -> !line.equals(street) && !line.unit().isEmpty())
        .map(AddressLine::unit)
        .findFirst()
        .orElse("");
  }

  /** Where no town is stated the last piece is one, unless it is the street. */
  private static List<String> lastPiece(
      List<List<Token>> pieces, List<AddressLine> lines, AddressLine street) {
    int last = pieces.size() - 1;
    boolean none =
        last < 1 || lines.get(last).equals(street) || !lines.get(last).number().isEmpty();
    return none || !lines.get(last).unit().isEmpty() ? List.of() : words(pieces.get(last));
  }
}
