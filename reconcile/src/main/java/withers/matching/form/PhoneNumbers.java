package withers.matching.form;

import com.google.i18n.phonenumbers.NumberParseException;
import com.google.i18n.phonenumbers.PhoneNumberUtil;
import com.google.i18n.phonenumbers.PhoneNumberUtil.PhoneNumberFormat;
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
    return digits.chars().distinct().count() == 1;
  }

  private Optional<Phone> first(String written, String digits) {
    Optional<PhoneNumber> usual = parse(written);
    if (usual.filter(Library.UTIL::isValidNumber).isPresent()) {
      return phone(usual, written, digits);
    }
    if (COUNTED.matcher(digits).matches()) {
      return Optional.empty();
    }
    Optional<PhoneNumber> abroad =
        abroad(written, digits).filter(Library.UTIL::isValidNumber).or(() -> usual);
    return phone(abroad, written, digits).or(() -> phone(abroad(written, digits), written, digits));
  }

  /** With 00 where the region dials otherwise, or with nothing before the country code. */
  private Optional<PhoneNumber> abroad(String written, String digits) {
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

  private Optional<PhoneNumber> parse(String written) {
    try {
      return Optional.of(Library.UTIL.parse(written, region));
    } catch (NumberParseException notAPhone) {
      return Optional.empty();
    }
  }

  private Optional<Phone> phone(Optional<PhoneNumber> number, String written, String digits) {
    if (number.isEmpty()) {
      return Optional.empty();
    }
    PhoneNumber found = number.get();
    return switch (Library.UTIL.isPossibleNumberWithReason(found)) {
      case IS_POSSIBLE -> isLocal(written, digits) ? local(digits) : whole(found);
      case IS_POSSIBLE_LOCAL_ONLY ->
          Library.UTIL.isValidNumber(found)
              ? whole(found)
              : local(Library.UTIL.getNationalSignificantNumber(found));
      case TOO_SHORT ->
          written.startsWith("+")
              ? Optional.empty()
              : local(Library.UTIL.getNationalSignificantNumber(found));
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

  private Optional<Phone> whole(PhoneNumber number) {
    String digits = Library.UTIL.format(number, PhoneNumberFormat.E164).substring(1);
    boolean tooShort = digits.length() < FEWEST_WHOLE_DIGITS && !Library.UTIL.isValidNumber(number);
    return tooShort
        ? Optional.empty()
        : Optional.of(new Phone(Long.parseLong(digits), digits.length(), false, kind(number)));
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
  private Phone.Kind kind(PhoneNumber number) {
    PhoneNumberType type = Library.UTIL.getNumberType(number);
    return type == PhoneNumberType.UNKNOWN ? kindOfRange(number) : kind(type);
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

  private static final class Library {
    static final PhoneNumberUtil UTIL = PhoneNumberUtil.getInstance();
  }
}
