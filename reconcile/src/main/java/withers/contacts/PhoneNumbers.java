package withers.contacts;

import com.google.i18n.phonenumbers.NumberParseException;
import com.google.i18n.phonenumbers.PhoneNumberUtil;
import com.google.i18n.phonenumbers.PhoneNumberUtil.PhoneNumberFormat;
import com.google.i18n.phonenumbers.PhoneNumberUtil.ValidationResult;
import com.google.i18n.phonenumbers.Phonenumber.PhoneNumber;
import java.util.function.UnaryOperator;

/**
 * Phones by their international number. The library is loaded with the first phone, not before.
 * Safe for several threads.
 *
 * @param region the country whose rules read a phone without a country code: ISO 3166-1 alpha-2, or
 *     {@code ZZ} for none
 */
public record PhoneNumbers(String region) implements UnaryOperator<String> {

  /**
   * The international number without its extension ({@code +} and digits, ITU-T E.164), or an empty
   * text when what is written can't be a phone or is a placeholder. Numbers that are possible but
   * not assigned to anybody count: records hold them, and those reserved for fiction are such
   * numbers.
   */
  @Override
  public String apply(String written) {
    String number = Placeholders.isPhone(written) ? "" : international(written);
    return Placeholders.isTooShort(number) ? "" : number;
  }

  private String international(String written) {
    try {
      PhoneNumber number = Library.UTIL.parse(written, region);
      return isPossible(number) ? Library.UTIL.format(number, PhoneNumberFormat.E164) : "";
    } catch (NumberParseException notAPhone) {
      return "";
    }
  }

  private static boolean isPossible(PhoneNumber number) {
    ValidationResult result = Library.UTIL.isPossibleNumberWithReason(number);
    return result == ValidationResult.IS_POSSIBLE
        || result == ValidationResult.IS_POSSIBLE_LOCAL_ONLY;
  }

  private static final class Library {
    static final PhoneNumberUtil UTIL = PhoneNumberUtil.getInstance();
  }
}
