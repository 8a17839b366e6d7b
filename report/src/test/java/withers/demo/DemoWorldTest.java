package withers.demo;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.i18n.phonenumbers.NumberParseException;
import com.google.i18n.phonenumbers.PhoneNumberUtil;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DemoWorldTest {

  private static final String REGENERATE =
      "fixtures/demo differs from what the generator writes; fixtures/README.md says how to write it anew";

  @Test
  void the_committed_exports_are_what_the_generator_writes(@TempDir Path folder) {
    DemoWorld.generate(DemoWorld.SEED, DemoWorld.ANIMALS, folder);
    Map<String, String> committed = files(Fixtures.folder().resolve("demo"));
    Map<String, String> written = files(folder);
    assertThat(written.keySet()).as(REGENERATE).isEqualTo(committed.keySet());
    written.forEach(
        (name, text) ->
            assertThat(text.equals(committed.get(name))).as(REGENERATE + ": " + name).isTrue());
  }

  @Test
  void the_same_seed_gives_the_same_world_and_another_seed_another_one(@TempDir Path folder) {
    DemoWorld.generate(7, 50, folder.resolve("a"));
    DemoWorld.generate(7, 50, folder.resolve("b"));
    DemoWorld.generate(8, 50, folder.resolve("c"));
    assertThat(files(folder.resolve("a"))).isEqualTo(files(folder.resolve("b")));
    assertThat(files(folder.resolve("a"))).isNotEqualTo(files(folder.resolve("c")));
  }

  @Test
  void one_animal_is_told_alike_each_time() {
    Ledger one = Lives.of(7, 3, 90);
    Ledger again = Lives.of(7, 3, 90);
    for (Source source : Source.values()) {
      assertThat(rows(one, source).toList()).isEqualTo(rows(again, source).toList());
    }
  }

  /**
   * 555-0100 to 555-0199 is set aside for fiction in every area code of the North American plan.
   */
  @Test
  void every_phone_is_reserved_for_fiction_and_valid() {
    PhoneNumberUtil phones = PhoneNumberUtil.getInstance();
    for (int number = 0; number < 8000; number++) {
      String phone = People.phone(number);
      assertThat(phone).matches("\\d{3}-555-01\\d\\d");
      assertThat(isValid(phones, phone)).as(phone).isTrue();
    }
  }

  @Test
  void every_mail_address_is_under_example_org() {
    files(Fixtures.folder().resolve("demo"))
        .forEach(
            (name, text) ->
                assertThat(all("[^\\s,;|\\[]+@[^\\s,;|\\]]+", text))
                    .as(name)
                    .allMatch(address -> address.matches("(?i).+@([a-z-]+\\.)?example\\.org")));
  }

  @Test
  void every_number_of_fifteen_digits_is_under_the_test_code_or_a_placeholder() {
    files(Fixtures.folder().resolve("demo"))
        .forEach(
            (name, text) ->
                assertThat(all("\\b\\d{15}\\b", text))
                    .as(name)
                    .allMatch(chip -> chip.matches("999\\d{12}|0{15}|123456789012345")));
  }

  private static Stream<String> all(String pattern, String text) {
    return Pattern.compile(pattern).matcher(text).results().map(MatchResult::group);
  }

  private static Stream<Row> rows(Ledger ledger, Source source) {
    return ledger.of(source).stream().flatMap(entry -> entry.asOn(Round.last().asOf()).stream());
  }

  private static boolean isValid(PhoneNumberUtil phones, String phone) {
    try {
      return phones.isValidNumber(phones.parse(phone, "US"));
    } catch (NumberParseException noPhone) {
      return false;
    }
  }

  private static Map<String, String> files(Path folder) {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder).filter(Files::isRegularFile)) {
      for (Path file : all.toList()) {
        files.put(folder.relativize(file).toString().replace('\\', '/'), Files.readString(file));
      }
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
    return files;
  }
}
