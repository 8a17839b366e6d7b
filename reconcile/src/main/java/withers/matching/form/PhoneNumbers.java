package withers.matching.form;

import com.google.i18n.phonenumbers.NumberParseException;
import com.google.i18n.phonenumbers.PhoneNumberUtil;
import com.google.i18n.phonenumbers.PhoneNumberUtil.PhoneNumberType;
import com.google.i18n.phonenumbers.Phonenumber.PhoneNumber;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/**
 * Reads one phone. Numbers that are possible but given to nobody count: records hold them, and
 * those reserved for fiction are such numbers. The library is loaded with the first phone, not
 * before. Safe for several threads.
 */
final class PhoneNumbers {

  /** Fewer digits are no phone in any country: the shortest that the library knows. */
  private static final int FEWEST_DIGITS = 4;

  /** Fewer digits are no phone that neighbours dial (our judgement). */
  private static final int FEWEST_LOCAL_DIGITS = 6;

  /**
   * More digits without a trunk prefix are a whole number whose prefix was lost (our judgement).
   */
  private static final int MOST_LOCAL_DIGITS = 8;

  /** Fewer digits, the country's among them, are a phone only where the plan says so. */
  private static final int FEWEST_WHOLE_DIGITS = 7;

  /** International numbers without their plus have at least as many (our judgement). */
  private static final int FEWEST_INTERNATIONAL = 11;

  /** Numbers that begin alike are of one use: so many digits (our judgement). */
  private static final int RANGE = 5;

  private static final int MOST_RANGES = 20_000;

  private static final Pattern COUNTED = Pattern.compile("0?123456789?0?");

  private final String region;
  private final Map<String, Phone.Kind> ranges = new ConcurrentHashMap<>();

  PhoneNumbers(String region) {
    this.region = region;
  }

  Optional<Phone> read(String written) {
    String digits = digits(written);
    boolean nobodys = digits.length() < FEWEST_DIGITS || isPlaceholder(digits);
    return nobodys ? Optional.empty() : first(written, digits);
  }

  private static boolean isPlaceholder(String digits) {
    return digits.chars().allMatch(digit -> digit == digits.charAt(0));
  }

  private Optional<Phone> first(String written, String digits) {
    Optional<Parsed> usual = parse(written);
    if (usual.filter(Parsed::isValid).isPresent()) {
      return phone(usual, written, digits);
    }
    if (COUNTED.matcher(digits).matches()) {
      return Optional.empty();
    }
    Optional<Parsed> abroad = abroad(written, digits);
    Optional<Parsed> likelier = abroad.filter(Parsed::isValid).or(() -> usual);
    return phone(likelier, written, digits).or(() -> phone(abroad, written, digits));
  }

  /** With 00 where the region dials otherwise, or with nothing before the country code. */
  private Optional<Parsed> abroad(String written, String digits) {
    if (written.startsWith("+")) {
      return Optional.empty();
    }
    if (digits.startsWith("00")) {
      return parse("+" + digits.substring(2));
    }
    return digits.length() < FEWEST_INTERNATIONAL || digits.startsWith("0")
        ? Optional.empty()
        : parse("+" + digits);
  }

  private Optional<Parsed> parse(String written) {
    try {
      PhoneNumber number = Library.UTIL.parse(written, region);
      return Optional.of(new Parsed(number, Library.UTIL.getNumberType(number)));
    } catch (NumberParseException notAPhone) {
      return Optional.empty();
    }
  }

  private Optional<Phone> phone(Optional<Parsed> parsed, String written, String digits) {
    if (parsed.isEmpty()) {
      return Optional.empty();
    }
    Parsed found = parsed.get();
    return switch (Library.UTIL.isPossibleNumberWithReason(found.number())) {
      case IS_POSSIBLE -> isLocal(written, digits) ? local(digits) : whole(found);
      case IS_POSSIBLE_LOCAL_ONLY -> found.isValid() ? whole(found) : local(found.national());
      case TOO_SHORT -> written.startsWith("+") ? Optional.empty() : local(found.national());
      default -> Optional.empty();
    };
  }

  /** Where area codes begin with 0, a short number without it is what neighbours dial. */
  private boolean isLocal(String written, String digits) {
    return !written.startsWith("+")
        && !digits.startsWith("0")
        && digits.length() <= MOST_LOCAL_DIGITS
        && digits.length() >= FEWEST_LOCAL_DIGITS
        && "0".equals(Library.UTIL.getNddPrefixForRegion(region, true));
  }

  private static Optional<Phone> local(String digits) {
    return digits.length() < FEWEST_LOCAL_DIGITS
        ? Optional.empty()
        : Optional.of(
            new Phone(Long.parseLong(digits), digits.length(), true, Phone.Kind.LANDLINE));
  }

  private Optional<Phone> whole(Parsed parsed) {
    String digits = parsed.number().getCountryCode() + parsed.national();
    boolean tooShort = digits.length() < FEWEST_WHOLE_DIGITS && !parsed.isValid();
    return tooShort
        ? Optional.empty()
        : Optional.of(new Phone(Long.parseLong(digits), digits.length(), false, kind(parsed)));
  }

  private static String digits(String written) {
    StringBuilder digits = new StringBuilder();
    written
        .codePoints()
        .filter(Character::isDigit)
        .forEach(digit -> digits.append(Character.digit(digit, 10)));
    return digits.toString();
  }

  /** What the plan uses a number for; of one that nobody has, what it uses the next ones for. */
  private Phone.Kind kind(Parsed parsed) {
    return parsed.isValid() ? kind(parsed.type()) : kindOfRange(parsed.number());
  }

  private Phone.Kind kindOfRange(PhoneNumber number) {
    String national = Library.UTIL.getNationalSignificantNumber(number);
    int range = Math.min(RANGE, national.length());
    String key = number.getCountryCode() + " " + national.length() + national.substring(0, range);
    Phone.Kind known = ranges.get(key);
    return known == null ? keep(key, kindOfNeighbours(number, national, range)) : known;
  }

  private Phone.Kind keep(String key, Phone.Kind kind) {
    if (ranges.size() >= MOST_RANGES) {
      ranges.clear();
    }
    ranges.put(key, kind);
    return kind;
  }

  private static Phone.Kind kindOfNeighbours(PhoneNumber number, String national, int range) {
    for (int at = range - 1; at > 1; at--) {
      for (char digit = '0'; digit <= '9'; digit++) {
        String other = national.substring(0, at) + digit + national.substring(at + 1);
        PhoneNumber neighbour = new PhoneNumber().mergeFrom(number);
        neighbour.setNationalNumber(Long.parseLong(other));
        PhoneNumberType type = Library.UTIL.getNumberType(neighbour);
        if (type != PhoneNumberType.UNKNOWN) {
          return kind(type);
        }
      }
    }
    return Phone.Kind.UNKNOWN;
  }

  private static Phone.Kind kind(PhoneNumberType type) {
    return switch (type) {
      case FIXED_LINE -> Phone.Kind.LANDLINE;
      case MOBILE -> Phone.Kind.MOBILE;
      default -> Phone.Kind.UNKNOWN;
    };
  }

  /**
   * A number as the library reads it.
   *
   * @param type unknown of a number that is not valid, and only of such: what is valid is in the
   *     range of some type
   */
  private record Parsed(PhoneNumber number, PhoneNumberType type) {

    boolean isValid() {
      return type != PhoneNumberType.UNKNOWN;
    }

    String national() {
      return Library.UTIL.getNationalSignificantNumber(number);
    }
  }

  private static final class Library {
    static final PhoneNumberUtil UTIL = PhoneNumberUtil.getInstance();
  }
}
