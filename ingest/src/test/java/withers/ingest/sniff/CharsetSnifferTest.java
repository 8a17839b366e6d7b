package withers.ingest.sniff;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The texts are invented lists of names and places, the languages' commonest. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CharsetSnifferTest {

  private static final String GERMAN = "Müller Jürgen Größe Straße Köln München Schäfer Weiß Bär";
  private static final String FRENCH = "Élodie Renée Béatrice François Garçon Noël Hélène Besançon";
  private static final String POLISH =
      "Łukasz Wójcik Małgorzata Kraków Łódź Gdańsk Wiśniewski Żółw";
  private static final String RUSSIAN = "Иванов Москва Собака Кошка Мария Петров Дружок Барсик";
  private static final String GREEK = "Παπαδόπουλος Αθήνα Σκύλος Γάτα Μαρία Γιώργος Θεσσαλονίκη";
  private static final String TURKISH = "Yılmaz Şahin Güneş Çelik İstanbul Öztürk Ayşe Doğan Kuş";
  private static final String KOREAN = "김철수 서울 강아지 고양이 박영희 부산 이민수 대구";

  private static byte[] rows(String names, String charset) {
    String[] words = names.split(" ");
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < 100; i++) {
      text.append(
          "P-%d,9990100000%05d,%s,%s %s\n"
              .formatted(
                  i,
                  i,
                  words[i % words.length],
                  words[(i + 1) % words.length],
                  words[(i * 3 + 2) % words.length]));
    }
    return text.toString().getBytes(Charset.forName(charset));
  }

  @ParameterizedTest
  @CsvSource({
    "UTF-8,EFBBBF",
    "UTF-16LE,FFFE",
    "UTF-16BE,FEFF",
    "UTF-32LE,FFFE0000",
    "UTF-32BE,0000FEFF"
  })
  void a_byte_order_mark_leaves_no_doubt(String name, String mark) {
    byte[] text = ("\uFEFF" + GERMAN).getBytes(Charset.forName(name));

    assertThat(java.util.HexFormat.of().withUpperCase().formatHex(text)).startsWith(mark);
    assertThat(CharsetSniffer.find(text))
        .isEqualTo(Finding.certain(Charset.forName(name), "it starts with a byte order mark"));
  }

  @ParameterizedTest
  @CsvSource({"UTF-16LE", "UTF-16BE"})
  void UTF_16_without_a_mark_shows_in_its_NULs(String name) {
    Finding<Charset> found = CharsetSniffer.find(rows(GERMAN, name));

    assertThat(found.ifClear(60)).hasValue(Charset.forName(name));
    assertThat(found.best().orElseThrow().evidence())
        .matches("\\d+ % of its pairs of bytes hold a NUL, all on the same side");
  }

  @Test
  void what_is_UTF_8_is_taken_for_that_wherever_a_sample_is_cut() {
    byte[] text = (GERMAN + " " + KOREAN + " 🐕").getBytes(StandardCharsets.UTF_8);
    for (int length = 0; length <= text.length; length++) {
      assertThat(CharsetSniffer.find(Arrays.copyOf(text, length)))
          .as("cut after %d bytes", length)
          .isEqualTo(Finding.certain(StandardCharsets.UTF_8, "every byte of it is UTF-8"));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "German,windows-1252,windows-1252",
    "German,ISO-8859-1,windows-1252",
    "Polish,windows-1250,windows-1250",
    "Polish,ISO-8859-2,ISO-8859-2",
    "Greek,windows-1253,ISO-8859-7",
    "Korean,EUC-KR,EUC-KR",
  })
  void text_of_several_languages_is_found_out(String language, String written, String found) {
    assertThat(CharsetSniffer.find(rows(text(language), written)).ifClear(25))
        .hasValue(Charset.forName(found));
  }

  @ParameterizedTest
  @CsvSource({
    "French,windows-1252",
    "Russian,windows-1251",
    "Russian,KOI8-R",
    "Turkish,windows-1254"
  })
  void where_the_detector_is_not_sure_nothing_is_taken_but_shown(String language, String written) {
    Finding<Charset> found = CharsetSniffer.find(rows(text(language), written));

    assertThat(found.ifClear(CharsetSniffer.TAKEN_FROM)).isEmpty();
    assertThat(found.guesses().stream().map(Guess::value)).contains(Charset.forName(written));
  }

  /** Sets that the detector does not know: the readings that it offers instead make no words. */
  @ParameterizedTest
  @CsvSource({
    "German,IBM850",
    "French,IBM850",
    "German,x-MacRoman",
    "French,x-MacRoman",
    "Polish,IBM852"
  })
  void text_in_a_set_that_the_detector_does_not_know_is_never_taken_for_another(
      String language, String written) {
    Finding<Charset> found = CharsetSniffer.find(rows(text(language), written));

    assertThat(found.ifClear(CharsetSniffer.TAKEN_FROM)).isEqualTo(Optional.empty());
  }

  private static String text(String language) {
    return switch (language) {
      case "German" -> GERMAN;
      case "French" -> FRENCH;
      case "Polish" -> POLISH;
      case "Russian" -> RUSSIAN;
      case "Greek" -> GREEK;
      case "Turkish" -> TURKISH;
      default -> KOREAN;
    };
  }
}
