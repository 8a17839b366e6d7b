package withers.matching.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** {@code emails.txt} says how e-mail addresses are read, and where each row comes from. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class EmailsTest {
  @Test
  void addresses_are_read_as_the_table_says() {
    List<List<String>> rows = Golden.rows("emails.txt", 3);

    assertThat(rows.stream().map(row -> row.get(0) + " | " + shown(row.get(0))))
        .containsExactlyElementsOf(
            rows.stream().map(row -> row.get(0) + " | " + row.get(1)).toList());
  }

  private static String shown(String written) {
    String emails =
        EmailReader.read(written).stream()
            .map(email -> (email.mailbox() + "@" + email.domain() + " " + email.tag()).strip())
            .collect(Collectors.joining(", "));
    return emails.isEmpty() ? "nothing" : emails;
  }
}
