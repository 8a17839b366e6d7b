package withers.contacts;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.i18n.phonenumbers.PhoneNumberUtil;
import com.google.i18n.phonenumbers.PhoneNumberUtil.PhoneNumberFormat;
import com.google.i18n.phonenumbers.PhoneNumberUtil.PhoneNumberType;
import com.google.i18n.phonenumbers.Phonenumber.PhoneNumber;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PhoneNumbersTest {

  /**
   * The first five were run against the Java library, two npm libraries and Debian's
   * python3-phonenumbers, which agree. The others are numbers that Ofcom and the North American
   * plan set aside for fiction; to the library they are possible, and some are not valid.
   */
  @ParameterizedTest(name = "{0} in {1} is {2}")
  @CsvSource({
    "+44 (0)20 7946 0958,  GB, +442079460958",
    "0044 20 7946 0958,    GB, +442079460958",
    "(212)5550100 x123,    US, +12125550100",
    "06 698 12345,         IT, +390669812345",
    "555-0100,             US, +15550100",
    "07700 900123,         GB, +447700900123",
    "01632 960123,         GB, +441632960123",
    "+1 415 555 0199,      ZZ, +14155550199"
  })
  void reads_phones_by_their_international_number(String written, String region, String expected) {
    assertThat(new PhoneNumbers(region).apply(written)).isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource({"none, US", "0, US", "12, GB", "'', US", "0123456789012345678901234567890, US"})
  void what_can_t_be_a_phone_is_not_stated(String written, String region) {
    assertThat(new PhoneNumbers(region).apply(written)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"000-000-0000, US", "(999) 999 9999, US", "1111111, US", "+999 999, ZZ"})
  void a_phone_of_one_digit_over_and_over_is_a_placeholder(String written, String region) {
    assertThat(new PhoneNumbers(region).apply(written)).isEmpty();
  }

  @Test
  void without_a_region_a_phone_needs_its_country_code() {
    assertThat(new PhoneNumbers("ZZ").apply("(212) 555-0100")).isEmpty();
  }

  /**
   * The example numbers that come with the library, in every region, written in the national way.
   */
  @Test
  void every_region_s_example_numbers_are_one_number_however_written() {
    PhoneNumberUtil util = PhoneNumberUtil.getInstance();
    int examples = 0;
    for (String region : util.getSupportedRegions()) {
      for (PhoneNumberType type : PhoneNumberType.values()) {
        Optional<PhoneNumber> example =
            Optional.ofNullable(util.getExampleNumberForType(region, type));
        if (example.isPresent()) {
          String national = util.format(example.get(), PhoneNumberFormat.NATIONAL);
          String international = util.format(example.get(), PhoneNumberFormat.INTERNATIONAL);
          PhoneNumbers phones = new PhoneNumbers(region);
          assertThat(phones.apply(national))
              .as("%s %s: %s", region, type, national)
              .isEqualTo(phones.apply(international));
          examples++;
        }
      }
    }
    assertThat(examples).isGreaterThan(1300);
  }
}
