package withers.matching.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The list of {@code fixtures/reference/isemail}, which others made: we read it as they do, but for
 * what {@code emails-of-others.tsv} names with the reason.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class EmailsOfOthersTest {
  private static final Path LIST = Path.of("../fixtures/reference/isemail/tests.json");

  /** An address, what the list says of it, and what we read. */
  private record Row(String written, String diagnosis, String read) {

    static Row of(JsonNode row) {
      String written = row.get(0).asString();
      return new Row(written, row.get(1).asString(), reading(known(written)));
    }

    static Row told(List<String> cells) {
      String written = JsonMapper.shared().readTree(cells.get(0)).asString();
      return new Row(written, cells.get(1), cells.get(2));
    }

    private static String reading(String written) {
      String read =
          EmailReader.read(written).stream()
              .map(email -> email.mailbox() + "@" + email.domain())
              .collect(Collectors.joining(", "));
      return read.isEmpty() ? "nothing" : read;
    }

    /** "test" and "a" are placeholders to us, and no mailboxes. */
    private static String known(String written) {
      return written.replace("test", "tost").replaceFirst("^a@", "o@");
    }

    /** Whether SMTP can deliver to it, whatever stands in the domain name system today. */
    private boolean canBeDelivered() {
      return diagnosis.equals("valid")
          || diagnosis.startsWith("dnsWarn")
          || diagnosis.startsWith("rfc5321");
    }

    private boolean isNone() {
      return diagnosis.startsWith("err") || diagnosis.startsWith("rfc5322");
    }

    boolean isAgreed() {
      return canBeDelivered()
          ? read.equals(known(written).toLowerCase(Locale.ROOT))
          : isNone() && read.equals("nothing");
    }
  }

  @Test
  void we_read_as_the_list_says_but_for_what_the_table_names() throws IOException {
    List<Row> all =
        StreamSupport.stream(
                JsonMapper.shared().readTree(Files.readString(LIST)).spliterator(), false)
            .map(Row::of)
            .distinct()
            .toList();
    assertThat(all).hasSize(184);

    assertThat(all.stream().filter(row -> !row.isAgreed()))
        .containsExactlyInAnyOrderElementsOf(table());
    assertThat(all.stream().filter(Row::isAgreed)).hasSizeGreaterThan(all.size() / 2);
  }

  private static List<Row> table() throws IOException {
    try (var stream =
        Objects.requireNonNull(
            EmailsOfOthersTest.class.getResourceAsStream("emails-of-others.tsv"))) {
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> line.startsWith("\""))
          .map(line -> Row.told(List.of(line.split("\t"))))
          .toList();
    }
  }
}
