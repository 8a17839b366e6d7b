package withers.matching.form;

import com.google.i18n.phonenumbers.NumberParseException;
import com.google.i18n.phonenumbers.PhoneNumberUtil;
import com.google.i18n.phonenumbers.PhoneNumberUtil.PhoneNumberFormat;
import com.google.i18n.phonenumbers.PhoneNumberUtil.PhoneNumberType;
import com.google.i18n.phonenumbers.PhoneNumberUtil.ValidationResult;
import com.google.i18n.phonenumbers.Phonenumber.PhoneNumber;
import java.util.stream.Stream;

/** Reads phones. The library is loaded with the first phone, not before. */
record PhoneReader(String region) {

  /** The phones of one field. */
  Stream<Phone> read(String written) {
    try {
      PhoneNumber number = Library.UTIL.parse(written, region);
      return phone(number, Library.UTIL.isPossibleNumberWithReason(number));
    } catch (NumberParseException notAPhone) {
      return Stream.empty();
    }
  }

  private static Stream<Phone> phone(PhoneNumber number, ValidationResult result) {
    String digits = digits(number, result);
    return digits.isEmpty()
        ? Stream.empty()
        : Stream.of(
            new Phone(
                Long.parseLong(digits),
                digits.length(),
                result == ValidationResult.IS_POSSIBLE_LOCAL_ONLY,
                kind(Library.UTIL.getNumberType(number))));
  }

  private static String digits(PhoneNumber number, ValidationResult result) {
    return switch (result) {
      case IS_POSSIBLE -> Library.UTIL.format(number, PhoneNumberFormat.E164).substring(1);
      case IS_POSSIBLE_LOCAL_ONLY -> Library.UTIL.getNationalSignificantNumber(number);
      default -> "";
    };
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
