package withers.report.mail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The addresses are invented. The diagnosis beside each is that of isemail 3.2.0 (npm,
 * BSD-3-Clause, a port of is_email) with {@code minDomainAtoms: 2}: 0 is a valid address, anything
 * else is one with a flaw.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class MailAddressTest {
  private static final String LABEL = "b".repeat(63);

  @ParameterizedTest
  @ValueSource(
      strings = {
        "post@example.org",
        "first.last+tag@mail.example.org",
        "o'neil@example.org",
        "!#$%&'*+/=?^_`{|}~-@example.org",
        "1@example.org",
        "a@x-y.example.org",
        "a@1.example.org"
      })
  void takes_plain_addresses_which_the_reference_finds_valid(String address) {
    assertThat(MailAddress.isAddress(address)).isTrue();
    assertThat(new MailAddress(address).value()).isEqualTo(address);
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '§',
      delimiter = '|',
      ignoreLeadingAndTrailingWhitespace = false,
      value = {
        "post|131",
        "post@|131",
        "@example.org|130",
        "post@@example.org|137",
        "a@b@example.org|137",
        ".post@example.org|141",
        "post.@example.org|142",
        "po..st@example.org|132",
        "post@.example.org|141",
        "post@example..org|132",
        "post@example.org.|142",
        "post@-example.org|143",
        "post@example-.org|144",
        "post@exam_ple.org|65",
        "post@exam ple.org|133",
        "po st@example.org|133",
        " post@example.org|18",
        "post@example.org |18",
        "\"po st\"@example.org|35",
        "\"post\"@example.org|11",
        "post(comment)@example.org|49",
        "post@[192.0.2.1]|12",
        "post@example|161",
        "post,all@example.org|137",
        "<post@example.org>|137",
        "Post <post@example.org>|133",
        "post@example.org;all@example.org|137",
        "post\\@example.org|137",
        "post@example.org/x|65",
        "po:st@example.org|137"
      })
  void refuses_what_the_reference_finds_a_flaw_in(String address, int diagnosis) {
    assertThat(MailAddress.isAddress(address)).as("isemail says %d", diagnosis).isFalse();
  }

  /**
   * Twins of signs, line ends beyond ASCII, and an encoded word (RFC 2047), which some would read.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "post\uFF20example.org",
        "post@example\u3002org",
        "post@\u0435xample.org",
        "post@example.org\u2028",
        "post@example.org\u0085Bcc: all@example.org",
        "post\u560A@example.org",
        "=?utf-8?q?post=0D=0A?=@example.org"
      })
  void refuses_what_is_not_what_it_looks_like(String address) {
    assertThat(MailAddress.isAddress(address)).isFalse();
  }

  /** isemail: 131, 149, 137, 150, 137. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "post@example.org\r\nBcc: all@example.org",
        "post@example.org\n",
        "post@example.org\r",
        "po\0st@example.org"
      })
  void refuses_what_could_end_a_line_of_the_header(String address) {
    assertThat(MailAddress.isAddress(address)).isFalse();
  }

  /** isemail: 0, for both. Mail programs and relays that can't carry them are still many. */
  @ParameterizedTest
  @ValueSource(strings = {"pöst@example.org", "post@exämple.org"})
  void refuses_addresses_outside_ASCII(String address) {
    assertThat(MailAddress.isAddress(address)).isFalse();
  }

  /** isemail: 0, 67; 0, 69; 0, 66. */
  @Test
  void knows_the_longest_local_part_label_and_address() {
    assertThat(MailAddress.isAddress("a".repeat(64) + "@example.org")).isTrue();
    assertThat(MailAddress.isAddress("a".repeat(65) + "@example.org")).isFalse();
    assertThat(MailAddress.isAddress("a@" + LABEL + ".org")).isTrue();
    assertThat(MailAddress.isAddress("a@" + LABEL + "b.org")).isFalse();
    String domain = String.join(".", LABEL, LABEL, LABEL);
    assertThat(MailAddress.isAddress("a@%s.%s.ex".formatted(domain, "b".repeat(57)))).isTrue();
    assertThat(MailAddress.isAddress("a@%s.%s.ex".formatted(domain, "b".repeat(58)))).isFalse();
  }

  @Test
  void the_refusal_does_not_repeat_the_address() {
    assertThatThrownBy(() -> new MailAddress("mara linden"))
        .hasMessage(
            "Expected a plain mail address such as \"post@example.org\", but found 11 other"
                + " characters");
  }
}
