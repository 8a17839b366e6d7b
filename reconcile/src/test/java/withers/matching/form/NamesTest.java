package withers.matching.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.contact.Contact;

/** {@code names.txt} says how names are read, and where each rule comes from. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class NamesTest {
  private static final Map<PersonName.Generation, String> GENERATIONS =
      Map.of(
          PersonName.Generation.NOT_STATED, "",
          PersonName.Generation.SENIOR, " !sr",
          PersonName.Generation.JUNIOR, " !jr",
          PersonName.Generation.SECOND, " !2",
          PersonName.Generation.THIRD, " !3",
          PersonName.Generation.FOURTH, " !4");
  private static final Map<PersonName.Sex, String> SEXES =
      Map.of(
          PersonName.Sex.NOT_STATED, "", PersonName.Sex.FEMALE, " ^f", PersonName.Sex.MALE, " ^m");

  private final NormalForms forms = new NormalForms("ZZ");

  @Test
  void names_are_read_as_the_table_says() {
    List<List<String>> rows = Golden.rows("names.txt", 3);

    assertThat(rows.stream().map(row -> row.get(0) + " | " + shown(row.get(0))))
        .containsExactlyElementsOf(
            rows.stream().map(row -> row.get(0) + " | " + row.get(1)).toList());
  }

  private String shown(String written) {
    NormalForm form = forms.of(contact(written));
    String people = form.names().stream().map(NamesTest::shown).collect(Collectors.joining(" ; "));
    String organisation = form.organisation().isEmpty() ? "" : "@ " + form.organisation();
    String all = (people + " " + organisation).strip();
    return all.isEmpty() ? "nobody" : all;
  }

  private static Contact contact(String written) {
    int slash = written.indexOf(" /");
    String given = slash < 0 ? "" : written.substring(0, slash);
    String family = slash < 0 ? "" : written.substring(slash + 2);
    return new Contact(
        slash < 0 ? written : "", given, family, List.of(), List.of(), List.of(), "", "", "", "");
  }

  private static String shown(PersonName name) {
    Reading reading = name.straight();
    String particles = reading.particles().isEmpty() ? "" : "+" + reading.particles() + " ";
    String parts =
        Stream.of(
                words(reading.given()),
                words(reading.either()),
                particles + words(reading.family()))
            .collect(Collectors.joining(" / "))
            .replace("  ", " ")
            .strip();
    return parts
        + (name.wholeFamily() ? " *" : "")
        + GENERATIONS.get(name.generation())
        + SEXES.get(name.sex());
  }

  private static String words(List<NameWord> words) {
    return words.stream().map(NameWord::text).collect(Collectors.joining(" "));
  }
}
