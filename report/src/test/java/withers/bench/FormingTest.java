package withers.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import withers.cli.Console;
import withers.contact.Contact;
import withers.corpus.Corpus;
import withers.corpus.Mix;

/** The benchmark of normal forms on a few contacts: that it reads them. Times are not looked at. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class FormingTest {

  private static final int PARTS = 5;

  @Test
  void reads_each_part_of_every_contact() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Forming forming = new Forming(new Console(stream(out), stream(out), false));

    int exit = new CommandLine(forming).execute("--pairs", "20", "--warm-up", "1", "--rounds", "2");

    List<String> lines = out.toString(StandardCharsets.UTF_8).lines().toList();
    assertThat(exit).as(lines.toString()).isZero();
    assertThat(lines).hasSize(1 + PARTS);
    assertThat(lines.get(0)).startsWith("40 contacts");
    assertThat(lines.get(PARTS)).matches("all +[0-9.]+ us first +[0-9.]+ us again");
    long whole = 40L * 2 * 3;
    assertThat(forming.stated()).isBetween(2 * whole, PARTS * whole);
  }

  @Test
  void a_part_has_nothing_of_the_others() {
    Contact contact = new Corpus(Mix.EVERYDAY).pair(0).one();

    assertThat(Part.NAMES.of(contact).fullName()).isEqualTo(contact.fullName());
    assertThat(Part.NAMES.of(contact).phones()).isEmpty();
    assertThat(Part.PHONES.of(contact).phones()).isEqualTo(contact.phones());
    assertThat(Part.PHONES.of(contact).fullName()).isEmpty();
    assertThat(Part.ADDRESSES.of(contact).addressLines()).isEqualTo(contact.addressLines());
    assertThat(Part.ADDRESSES.of(contact).emails()).isEmpty();
    assertThat(Part.EMAILS.of(contact).emails()).isEqualTo(contact.emails());
    assertThat(Part.EMAILS.of(contact).addressLines()).isEmpty();
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }
}
