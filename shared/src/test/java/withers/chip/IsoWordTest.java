package withers.chip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** Words and checksums against values published elsewhere; each row names its source. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class IsoWordTest {

  private static final long SEED = 11785;

  @ParameterizedTest
  @CsvFileSource(resources = "iso-words.csv", numLinesToSkip = 1)
  void writes_and_reads_the_published_words(
      String number, String standard, String received, String dotted, String crc, String source) {
    ChipNumber chip = ChipNumber.parse(number);
    IsoWord word = IsoWord.of(chip);
    assertThat(word.hexadecimal()).as(source).isEqualTo(standard);
    assertThat(word.receivedHexadecimal()).as(source).isEqualTo(received);
    assertThat(new IsoWord(Long.parseUnsignedLong(standard, 16)).number()).contains(chip);
    assertThat(IsoWord.ofReceived(Long.parseUnsignedLong(received, 16)).number()).contains(chip);
    if (dotted != null) {
      assertThat(word.dottedHexadecimal()).as(source).isEqualTo(dotted);
    }
    if (crc != null) {
      assertThat(Integer.toHexString(word.crc())).as(source).isEqualToIgnoringCase(crc);
    }
  }

  @ParameterizedTest
  @CsvFileSource(resources = "iso-words.csv", numLinesToSkip = 1)
  void its_published_spellings_are_all_read(
      String number, String standard, String received, String dotted, String crc, String source) {
    ChipNumberReader reader = new ChipNumberReader(true);
    Reading expected = new Reading.Accepted(ChipNumber.parse(number), Set.of());
    assertThat(reader.read(number)).as(source).isEqualTo(expected);
    assertThat(reader.read(standard)).as(source).isEqualTo(expected);
    assertThat(reader.read(received)).as(source).isEqualTo(expected);
    assertThat(reader.read(IsoWord.of(ChipNumber.parse(number)).dottedHexadecimal()))
        .as(source)
        .isEqualTo(expected);
  }

  /** The check value that every catalogue of checksums gives for CRC-16/KERMIT. */
  @Test
  void has_the_check_value_of_crc_16_kermit() {
    byte[] check = "123456789".getBytes(StandardCharsets.US_ASCII);
    assertThat(Crc16Kermit.of(check)).isEqualTo(0x2189);
  }

  /** Bits as ISO 11784 numbers them, bit 1 the most significant. */
  @Test
  void finds_each_field_in_its_bits() {
    assertThat(new IsoWord(bits(1, 1)).isAnimal()).isTrue();
    assertThat(new IsoWord(bits(2, 4)).retaggingCounter()).isEqualTo(7);
    assertThat(new IsoWord(bits(5, 9)).userInformation()).isEqualTo(31);
    assertThat(new IsoWord(bits(10, 14)).reserved()).isEqualTo(31);
    assertThat(new IsoWord(bits(15, 15)).isAdvancedTransponder()).isTrue();
    assertThat(new IsoWord(bits(16, 16)).hasAdditionalData()).isTrue();
    assertThat(new IsoWord(bits(17, 26)).code()).isEqualTo(1023);
    assertThat(new IsoWord(bits(27, 64)).nationalCode()).isEqualTo(274877906943L);
  }

  @Test
  void finds_nothing_in_the_bits_of_other_fields() {
    assertThat(new IsoWord(~bits(1, 1)).isAnimal()).isFalse();
    assertThat(new IsoWord(0).isAnimal()).isFalse();
    assertThat(new IsoWord(~bits(2, 4)).retaggingCounter()).isZero();
    assertThat(new IsoWord(~bits(5, 9)).userInformation()).isZero();
    assertThat(new IsoWord(~bits(10, 14)).reserved()).isZero();
    assertThat(new IsoWord(~bits(15, 15)).isAdvancedTransponder()).isFalse();
    assertThat(new IsoWord(~bits(16, 16)).hasAdditionalData()).isFalse();
    assertThat(new IsoWord(~bits(17, 26)).code()).isZero();
    assertThat(new IsoWord(~bits(27, 64)).nationalCode()).isZero();
  }

  @Test
  void has_no_number_where_three_digits_show_no_code() {
    assertThat(new IsoWord(0).number()).isEmpty();
    assertThat(new IsoWord(1000L << 38).number()).isEmpty();
    assertThat(new IsoWord(999L << 38).number()).contains(ChipNumber.iso(999, 0));
  }

  @Test
  void is_of_iso_numbers_only() {
    assertThatIllegalStateException()
        .isThrownBy(() -> IsoWord.of(ChipNumber.nineDigit(1)))
        .withMessage("Expected an ISO number, but found 000000001");
  }

  @Test
  void gives_back_the_number_that_it_was_made_of() {
    Random random = new Random(SEED);
    for (int i = 0; i < 10_000; i++) {
      ChipNumber number = RandomNumbers.iso(random, 1 + random.nextInt(999));
      IsoWord word = IsoWord.of(number);
      assertThat(word.number()).as("seed %d", SEED).contains(number);
      assertThat(IsoWord.ofReceived(word.received())).as("seed %d", SEED).isEqualTo(word);
      assertThat(word.bits() & -1L >>> 16).isEqualTo(number.packed());
    }
  }

  private static long bits(int first, int last) {
    return (-1L >>> first - 1) & (-1L << 64 - last);
  }
}
