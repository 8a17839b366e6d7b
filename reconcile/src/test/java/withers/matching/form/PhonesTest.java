package withers.matching.form;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.i18n.phonenumbers.PhoneNumberUtil;
import com.google.i18n.phonenumbers.PhoneNumberUtil.PhoneNumberFormat;
import com.google.i18n.phonenumbers.PhoneNumberUtil.PhoneNumberType;
import com.google.i18n.phonenumbers.Phonenumber.PhoneNumber;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** {@code phones.txt} says how phones are read, and where each row comes from. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class PhonesTest {
  private static final Map<Phone.Kind, String> KINDS =
      Map.of(Phone.Kind.LANDLINE, "L", Phone.Kind.MOBILE, "M", Phone.Kind.UNKNOWN, "-");

  @Test
  void phones_are_read_as_the_table_says() {
    List<List<String>> rows = Golden.rows("phones.txt", 4);

    assertThat(rows.stream().map(row -> row.get(1) + " | " + shown(row.get(0), row.get(1))))
        .containsExactlyElementsOf(
            rows.stream().map(row -> row.get(1) + " | " + row.get(2)).toList());
  }

  private static String shown(String region, String written) {
    String phones =
        new PhoneReader(region)
            .read(written).stream().map(PhonesTest::shown).collect(Collectors.joining(" "));
    return phones.isEmpty() ? "nothing" : phones;
  }

  private static String shown(Phone phone) {
    return (phone.local() ? "~" : "+") + phone.number() + KINDS.get(phone.kind());
  }

  /** The example numbers that come with the library, in every region and every layout. */
  @Test
  void every_region_s_example_numbers_are_one_number_however_written() {
    PhoneNumberUtil util = PhoneNumberUtil.getInstance();
    int examples = 0;
    for (String region : util.getSupportedRegions()) {
      PhoneReader reader = new PhoneReader(region);
      for (PhoneNumberType type : PhoneNumberType.values()) {
        Optional<PhoneNumber> example =
            Optional.ofNullable(util.getExampleNumberForType(region, type));
        if (example.isPresent()) {
          assertOneNumber(reader, util, example.get(), region + " " + type);
          examples++;
        }
      }
    }
    assertThat(examples).isGreaterThan(1300);
  }

  private static void assertOneNumber(
      PhoneReader reader, PhoneNumberUtil util, PhoneNumber example, String which) {
    long expected = Long.parseLong(util.format(example, PhoneNumberFormat.E164).substring(1));
    List<Phone> whole = List.of(PhonesTest.one(reader, util, example, PhoneNumberFormat.E164));
    assertThat(whole.get(0).number()).as(which).isEqualTo(expected);
    assertThat(one(reader, util, example, PhoneNumberFormat.INTERNATIONAL).isSame(whole.get(0)))
        .as(which)
        .isTrue();
    Phone national = one(reader, util, example, PhoneNumberFormat.NATIONAL);
    assertThat(national.isSame(whole.get(0)) || national.mayBe(whole.get(0))).as(which).isTrue();
  }

  private static Phone one(
      PhoneReader reader, PhoneNumberUtil util, PhoneNumber example, PhoneNumberFormat format) {
    String written = util.format(example, format);
    List<Phone> phones = reader.read(written);
    assertThat(phones).as(written).hasSize(1);
    return phones.get(0);
  }

  @Test
  void a_local_number_may_be_any_whole_one_that_ends_in_it() {
    PhoneReader reader = new PhoneReader("GB");
    Phone whole = reader.read("01632 960123").get(0);
    Phone local = reader.read("960123").get(0);
    Phone other = reader.read("960124").get(0);

    assertThat(whole.mayBe(local)).isTrue();
    assertThat(local.mayBe(whole)).isTrue();
    assertThat(local.isSame(whole)).isFalse();
    assertThat(other.mayBe(whole)).isFalse();
    assertThat(other.isOneDigitFrom(local)).isTrue();
    assertThat(local.isOneDigitFrom(local)).isFalse();
  }
}
