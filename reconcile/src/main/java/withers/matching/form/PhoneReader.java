package withers.matching.form;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Reads the phones of a field, which may hold several, with remarks. Remembers how phones were
 * read: a household's number stands in many records, and reading it costs more than all the rest of
 * a contact. Safe for several threads.
 */
final class PhoneReader {

  /** Some 200 bytes each. */
  private static final int MOST_KEPT = 200_000;

  private static final String GROUPING = " -.()";

  /** What parts two numbers for certain, and what may stand within one, too. */
  private static final Pattern BETWEEN =
      Pattern.compile(
          "[;,|\\n\\r]+|\\s(?:or|and|und|oder|ou|et|o|y|e|en|of|lub|i)\\s|[&]|\\s/\\s|(?<=\\S\\s{0,9})(?=\\+)");

  private static final Pattern SLASH = Pattern.compile("/");

  /** An extension and all behind it; what stands in brackets and has letters; other letters. */
  private static final Pattern EXTENSION =
      Pattern.compile(
          "(?i)(?:(?:ext|extn|extension|x|dw|durchwahl|app|int|poste|wewn|toestel|tst|anexo|ramal)\\b?[.:\\s]*|#\\s*)\\d{1,6}\\D*$");

  private static final Pattern BRACKETED = Pattern.compile("\\([^)]*\\p{L}[^)]*\\)");
  private static final Pattern REMARK = Pattern.compile("^[^\\d+]*\\p{L}[^\\d+(]*|\\p{L}\\D*$");

  private static final Pattern OF_A_SPREADSHEET = Pattern.compile("(?<=\\d)\\.0$");

  /** {@code 1-800-555-CATS}: letters of the dial. */
  private static final Pattern VANITY = Pattern.compile("[+\\d][\\d\\s().-]{2,}-[A-Z]{3,}[\\d-]*");

  private static final Pattern SCIENTIFIC = Pattern.compile("\\d[.,]\\d+[eE]\\+?\\d+");
  private static final int SHORTEST_OF_TWO = 7;

  private final PhoneNumbers numbers;
  private final Remembered<String, List<Phone>> read = new Remembered<>(MOST_KEPT, this::several);

  PhoneReader(String region) {
    numbers = new PhoneNumbers(region);
  }

  List<Phone> read(String written) {
    boolean number = written.endsWith(".0");
    return read.of(bare(number ? OF_A_SPREADSHEET.matcher(written).replaceFirst("") : written));
  }

  private List<Phone> several(String written) {
    return isBare(written) ? numbers.read(written).stream().toList() : parted(written);
  }

  /** Nothing but digits, and a plus before them: one number, and no remark. */
  private static boolean isBare(String written) {
    for (int i = 0; i < written.length(); i++) {
      if (!isDigit(written.charAt(i)) && (i > 0 || written.charAt(i) != '+')) {
        return false;
      }
    }
    return true;
  }

  private List<Phone> parted(String written) {
    List<Phone> phones = new ArrayList<>();
    if (!SCIENTIFIC.matcher(written).find()) {
      for (String piece : BETWEEN.split(written)) {
        pieces(piece).flatMap(this::one).forEach(phones::add);
      }
    }
    return phones.stream().distinct().toList();
  }

  /** A slash parts an area code from its number, or two numbers that are both long enough. */
  private static Stream<String> pieces(String written) {
    String[] pieces = SLASH.split(written);
    boolean all = Stream.of(pieces).allMatch(piece -> digits(piece) >= SHORTEST_OF_TWO);
    return all ? Stream.of(pieces) : Stream.of(written);
  }

  private static long digits(String text) {
    return text.codePoints().filter(Character::isDigit).count();
  }

  private Stream<Phone> one(String written) {
    String number = EXTENSION.matcher(written).replaceFirst("");
    String plain = BRACKETED.matcher(number).replaceAll(" ");
    return VANITY.matcher(plain.strip()).matches()
        ? numbers.read(plain.strip()).stream()
        : numbers.read(withoutRemarks(plain).strip()).stream();
  }

  private static String withoutRemarks(String number) {
    return REMARK.matcher(number.substring(0, endOfNumber(number))).replaceAll(" ");
  }

  /** Behind a whole number words begin, which may hold digits of their own: after 6pm. */
  private static int endOfNumber(String number) {
    int digits = 0;
    for (int i = 0; i < number.length() - 1; i++) {
      digits += Character.isDigit(number.charAt(i)) ? 1 : 0;
      boolean word =
          Character.isLetter(number.charAt(i)) && Character.isLetter(number.charAt(i + 1));
      if (word && digits >= SHORTEST_OF_TWO) {
        return i;
      }
    }
    return number.length();
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  /** The phone without spaces, dashes, dots and brackets, if there is nothing else to it. */
  private static String bare(String written) {
    StringBuilder bare = new StringBuilder(written.length());
    for (int i = 0; i < written.length(); i++) {
      char c = written.charAt(i);
      if (isDigit(c) || c == '+' && bare.isEmpty()) {
        bare.append(c);
      } else if (GROUPING.indexOf(c) < 0) {
        return written;
      }
    }
    return bare.toString();
  }
}
