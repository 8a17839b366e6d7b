package withers.contacts;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.i18n.phonenumbers.PhoneNumberUtil;
import com.google.i18n.phonenumbers.PhoneNumberUtil.PhoneNumberFormat;
import com.google.i18n.phonenumbers.PhoneNumberUtil.PhoneNumberType;
import com.google.i18n.phonenumbers.Phonenumber.PhoneNumber;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class RememberedPhonesTest {

  @Test
  void reads_a_number_once_however_its_digits_are_grouped() {
    List<String> read = new ArrayList<>();
    RememberedPhones phones =
        new RememberedPhones(
            written -> {
              read.add(written);
              return "key of " + written;
            });

    assertThat(Stream.of("(212) 555-0100", "212.555.0100", "2125550100").map(phones))
        .containsOnly("key of 2125550100");
    assertThat(read).containsExactly("2125550100");
  }

  @ParameterizedTest(name = "{0} stays")
  @CsvSource({
    "212 555-0100 ext 12",
    "212 555-0100 x12",
    "555-0100/0101",
    "1-800-FLOWERS",
    "555*0100",
    "٢١٢ ٥٥٥ ٠١٠٠",
    "tel:+1-212-555-0100;ext=3"
  })
  void leaves_a_phone_alone_that_has_more_to_it_than_digits(String written) {
    assertThat(RememberedPhones.bare(written)).isEqualTo(written);
  }

  @Test
  void keeps_the_plus_sign() {
    assertThat(RememberedPhones.bare("+44 (0)20 7946 0958")).isEqualTo("+4402079460958");
  }

  /**
   * The example numbers that come with the library, in every region and in the three ways in which
   * it writes them for people.
   */
  @Test
  void grouping_makes_no_difference_to_the_library() {
    PhoneNumberUtil util = PhoneNumberUtil.getInstance();
    int bared = 0;
    for (String region : util.getSupportedRegions()) {
      PhoneNumbers phones = new PhoneNumbers(region);
      for (String written : examples(util, region).toList()) {
        String bare = RememberedPhones.bare(written);
        assertThat(phones.apply(bare))
            .as("%s: %s", region, written)
            .isEqualTo(phones.apply(written));
        bared += bare.equals(written) ? 0 : 1;
      }
    }
    assertThat(bared).isGreaterThan(3_000);
  }

  private static Stream<String> examples(PhoneNumberUtil util, String region) {
    return Stream.of(PhoneNumberType.values())
        .flatMap(type -> Optional.ofNullable(util.getExampleNumberForType(region, type)).stream())
        .flatMap(number -> written(util, number));
  }

  private static Stream<String> written(PhoneNumberUtil util, PhoneNumber number) {
    String international = util.format(number, PhoneNumberFormat.INTERNATIONAL);
    return Stream.of(
        util.format(number, PhoneNumberFormat.NATIONAL),
        international,
        "(" + international.replaceFirst(" ", ") "),
        international.replace(' ', '.'));
  }
}
