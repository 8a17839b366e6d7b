package withers.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import withers.contact.Contact;
import withers.matching.Verdict;

/** The pairs written by hand are all there, and harm nobody. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class WrittenPairsTest {
  private static final List<WrittenPair> PAIRS = WrittenPairs.read();

  /**
   * Digits of the ranges kept for fiction, with or without the country code; sources in phones.txt.
   */
  private static final String FICTION =
      "(\\+?1)?[2-9]\\d{2}55501\\d{2}"
          + "|(\\+44|0)(7700900\\d{3}|1632960\\d{3}|2079460\\d{3}|1[1-9]\\d4960\\d{3})"
          + "|(\\+49|0)(3023125|6990009|4066969|8999998)\\d{3}|(\\+49|0)(17139200|176040690)\\d{2}"
          + "|(\\+33|0)(19900|26191|35301|63998)\\d{4}"
          + "|(\\+46|0)(8465004|3139006|4062804|7017406)\\d{2}"
          + "|(\\+61|0)(49157\\d{4}|[2378](5550|7010)\\d{4})";

  @ParameterizedTest
  @EnumSource(Verdict.class)
  void every_verdict_has_at_least_twenty_pairs(Verdict verdict) {
    assertThat(PAIRS).filteredOn(pair -> pair.expected() == verdict).hasSizeGreaterThan(19);
  }

  @Test
  void every_pair_says_why() {
    assertThat(PAIRS).allMatch(pair -> pair.why().endsWith(".") && pair.why().length() > 10);
  }

  @Test
  void telephone_numbers_are_kept_for_fiction() {
    Stream<String> phones = contacts().flatMap(contact -> contact.phones().stream());

    assertThat(phones.map(phone -> phone.replaceAll("[^+0-9]", "")))
        .allMatch(p -> p.matches(FICTION));
  }

  @Test
  void mail_would_reach_nobody() {
    assertThat(contacts().flatMap(contact -> contact.emails().stream()))
        .allMatch(email -> email.matches("(?i)\\S+@example\\.(org|com|net)"));
  }

  private static Stream<Contact> contacts() {
    return PAIRS.stream().flatMap(pair -> Stream.of(pair.one(), pair.other()));
  }
}
