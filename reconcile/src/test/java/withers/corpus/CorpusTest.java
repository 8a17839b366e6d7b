package withers.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import withers.contact.Contact;

/** The corpus is what docs/matching.md says it is, and stays so. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CorpusTest {
  private static final int SOME = 10_000;
  private static final Path PAGE = Path.of("../docs/matching.md");
  private static final Map<Mix, List<Pair>> MADE = new EnumMap<>(Mix.class);

  /** The first pairs as they were before anything was tuned: a changed corpus judges anew. */
  @ParameterizedTest
  @CsvSource({
    "TUNING,   a9275a1e6e7a2ec3103c21ef149753b2da75ae5016c4f318ad65ca3e66831c07",
    "HELD_OUT, a972db044f7fd56d8d0412c5af8b3ae81d75ed04b26ec71c53994d62a890cb86",
    "EVERYDAY, 0d34ae0a8d14bdb68566bec19a3744b5e31836a0d29d37eda86229cdc49cdca0"
  })
  void pairs_are_those_of_the_first_day(Mix mix, String digest) throws NoSuchAlgorithmException {
    MessageDigest all = MessageDigest.getInstance("SHA-256");
    pairs(mix).stream().map(CorpusTest::text).forEach(all::update);

    assertThat(HexFormat.of().formatHex(all.digest())).isEqualTo(digest);
  }

  private static byte[] text(Pair pair) {
    String text = pair.kind() + text(pair.one()) + text(pair.other()) + pair.corruptions();
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static String text(Contact contact) {
    return Stream.of(
            contact.name(),
            contact.givenName(),
            contact.familyName(),
            contact.phones(),
            contact.emails(),
            contact.addressLines(),
            contact.postcode(),
            contact.town(),
            contact.country())
        .toList()
        .toString();
  }

  @ParameterizedTest
  @EnumSource(Mix.class)
  void every_kind_and_every_corruption_occurs(Mix mix) {
    List<Pair> pairs = pairs(mix);

    assertThat(pairs).extracting(Pair::kind).contains(Kind.values());
    assertThat(pairs).flatExtracting(Pair::corruptions).contains(Corruption.values());
    assertThat(pairs).extracting(Pair::reach).contains(Reach.values());
  }

  @ParameterizedTest
  @EnumSource(Mix.class)
  void mail_would_reach_nobody(Mix mix) {
    Stream<String> emails = contacts(mix).flatMap(contact -> contact.emails().stream());

    assertThat(emails.map(email -> email.toLowerCase(Locale.ROOT)))
        .allMatch(email -> email.matches("\\S+@\\S*example\\.(org|com|net|ogr|cmo|nte)"));
  }

  private static List<Pair> pairs(Mix mix) {
    return MADE.computeIfAbsent(mix, one -> new Corpus(one).pairs(SOME).toList());
  }

  private static Stream<Contact> contacts(Mix mix) {
    return pairs(mix).stream().flatMap(pair -> Stream.of(pair.one(), pair.other()));
  }

  @Test
  void undecidable_pairs_are_the_stated_few() {
    long undecidable =
        pairs(Mix.TUNING).stream().filter(p -> p.reach() == Reach.UNDECIDABLE).count();

    assertThat(undecidable * 100.0 / SOME).isBetween(4.0, 5.0);
  }

  @Test
  void the_page_states_the_shares_of_corruptions() throws IOException {
    String page = Files.readString(PAGE);

    assertThat(Corruption.values())
        .allMatch(one -> row(page, one.name()).endsWith(shares(one::weight)));
  }

  @Test
  void the_page_states_the_shares_of_kinds() throws IOException {
    String page = Files.readString(PAGE);

    assertThat(Kind.values())
        .allMatch(one -> row(page, one.name()).endsWith(allShares(one::weight)));
  }

  private static String allShares(ToDoubleFunction<Mix> weight) {
    return shares(weight) + " %s |".formatted(plain(weight, Mix.EVERYDAY));
  }

  private static String row(String page, String name) {
    return page.lines().filter(line -> line.startsWith("| `" + name + "`")).findFirst().orElse("");
  }

  private static String shares(ToDoubleFunction<Mix> weight) {
    return "| %s | %s |".formatted(plain(weight, Mix.TUNING), plain(weight, Mix.HELD_OUT));
  }

  private static String plain(ToDoubleFunction<Mix> weight, Mix mix) {
    String number = String.valueOf(weight.applyAsDouble(mix));
    return number.endsWith(".0") ? number.substring(0, number.length() - 2) : number;
  }
}
