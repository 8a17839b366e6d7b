package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withers.report.Coast;

/** A clinic whose client is not who is registered, and somebody who asked. Invented. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SettleCommandTest {

  private static final String NUMBER = "999000000001003";

  @TempDir private Path folder;

  @BeforeEach
  void a_dog_that_changed_hands() throws IOException {
    Coast.writeWorkspace(folder);
    Coast.writePatients(folder);
    Coast.writeRegister(folder);
    Coast.write(
        folder,
        "inbox/patients-2026-02-27.csv",
        """
        No,Chip,Seen,Client,Phone
        P-19,999000000001003,2025-06-01,Mara Linden,+1 212 555 0151
        """);
    Coast.write(
        folder,
        "inbox/register-2026-02-28.csv",
        """
        No,Chip,Since,Contact,Phone
        T-10,999000000001003,2022-05-01,Jonas Abel,+1 212 555 0161
        """);
    assertThat(withers("run").code()).isZero();
  }

  private CommandRun withers(String command, String... words) {
    return CommandRun.of(
        Stream.concat(Stream.of(command, "--workspace", folder.toString()), Arrays.stream(words))
            .toArray(String[]::new));
  }

  private CommandRun settle(String... words) {
    return withers(
        "settle",
        Stream.concat(
                Stream.of("--by", "front desk", "--reason", "asked both"), Arrays.stream(words))
            .toArray(String[]::new));
  }

  private String latestList() throws IOException {
    String run = Files.readString(folder.resolve("runs/latest")).strip();
    return Files.readString(folder.resolve("lists").resolve(run).resolve("overview.html"));
  }

  @Test
  void what_is_settled_is_gone_from_the_next_run_and_told_as_settled() throws IOException {
    CommandRun settled = settle(NUMBER, "contact-behind", "--as", "right-as-it-is");

    assertThat(settled.err()).isEmpty();
    assertThat(settled.code()).isZero();
    assertThat(settled.out())
        .matches(
            "Settled: [0-9A-Z]{4}-[0-9A-Z]{4}, contact-behind of "
                + NUMBER
                + ": right-as-it-is\\.\n");
    CommandRun run = withers("run");
    assertThat(run.out())
        .contains(
            "Nothing is to be followed up.",
            "0 new, 0 still open, 0 settled by new records.",
            "One is not listed, because a person has settled it.");
    assertThat(latestList()).contains("Settled by a person, and not listed");
    assertThat(withers("reconcile", "--json").out()).contains("\"closed\":0,\"settled\":1");
    assertThat(withers("reconcile").out()).contains("Settled by people, and not listed: 1");
    assertThat(withers("explain", NUMBER).out())
        .contains(
            "settled by a person, and not listed",
            "What people settled:\n  2026-03-01 right as it is, while custodian and registrations stay, by front desk: \"asked both\"\n");
  }

  @Test
  void a_household_is_settled_for_both_contacts_until_it_ends() {
    assertThat(
            settle(NUMBER, "--as", "same-household", "--on", "2026-02-20", "--until", "2026-03-31")
                .code())
        .isZero();

    CommandRun run = withers("run");
    assertThat(run.out()).contains("Nothing is to be followed up.");
    assertThat(withers("explain", NUMBER).out())
        .contains(
            ": same household, as a person settled it; by their details alone:\n",
            "2026-02-20 the two contacts are of the same household, by front desk: \"asked both\"; until 2026-03-31")
        .doesNotContain("Mara", "Jonas", "555 01");
    assertThat(withers("reconcile", "--as-of", "2026-04-01").out())
        .contains("1 opened, 0 still open");
  }

  @Test
  void it_is_taken_back_by_the_reference_too() {
    String told = settle(NUMBER, "--as", "different-people").out();
    String reference = told.substring("Settled: ".length(), told.indexOf(','));
    withers("run");

    assertThat(settle(reference, "--withdraw").out())
        .startsWith("Taken back: what was settled about " + reference + ", contact-behind of ");
    CommandRun again = settle(reference, "--withdraw");
    assertThat(again.code()).isEqualTo(2);
    assertThat(again.err())
        .contains("Expected a follow-up that somebody settled, but nothing is settled about");
  }

  @Test
  void a_question_is_answered_by_its_reference() throws IOException {
    String asked = "999000000001011";
    Coast.write(
        folder,
        "inbox/patients-2026-02-28.csv",
        """
        No,Chip,Seen,Client,Phone
        P-19,999000000001003,2025-06-01,Mara Linden,+1 212 555 0151
        P-20,999000000001011,2025-06-01,Lena Smith,+1 212 555 0171
        """);
    Coast.write(
        folder,
        "inbox/register-2026-03-01.csv",
        """
        No,Chip,Since,Contact,Phone
        T-10,999000000001003,2022-05-01,Jonas Abel,+1 212 555 0161
        T-11,999000000001011,2022-05-01,L. Smith,+1 212 555 0199
        """);
    withers("run");
    String told = withers("explain", asked).out();
    String reference = told.substring("Follow-up ".length(), told.indexOf(':'));
    assertThat(told).contains("cannot-tell of " + asked, "a question, no follow-up");

    assertThat(settle(reference, "--as", "different-people").code()).isZero();
    withers("run");
    assertThat(withers("explain", asked).out()).contains("contact-behind of " + asked);

    assertThat(settle(reference, "--withdraw").code()).isZero();
    withers("run");
    assertThat(withers("explain", asked).out()).contains("contact-behind of " + asked, "closed");
  }

  @Test
  void what_was_settled_as_right_comes_back_when_it_is_taken_back() {
    settle(NUMBER, "--as", "right-as-it-is");
    withers("run");
    settle(NUMBER, "--withdraw");

    assertThat(withers("run").out()).contains("1 new, 0 still open, 0 settled by new records.");
  }

  @Test
  void the_same_again_changes_nothing() {
    settle(NUMBER, "--as", "right-as-it-is");

    assertThat(settle(NUMBER, "--as", "right-as-it-is").out())
        .startsWith("Nothing new: the same is settled about ");
  }

  @Test
  void a_follow_up_that_is_none_is_refused() {
    CommandRun refused = settle("ABCD-EFGH", "--as", "right-as-it-is");

    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.out()).isEmpty();
    assertThat(refused.err())
        .contains(
            " tells of, but found no such: give the reference as a list shows it, or the number and the kind");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "call 212 555 0151",
        "0151/23 45 67",
        "(212) 5550151",
        "２１２５５５０１５１",
        "it is 1.2.3.4.5.6",
        "write to mara@example.org",
        "write to mara (at) example.org",
        "ｍａｒａ＠example"
      })
  void a_reason_with_a_phone_or_an_e_mail_address_is_refused_and_not_repeated(String reason) {
    CommandRun refused =
        withers(
            "settle", NUMBER, "--as", "right-as-it-is", "--by", "front desk", "--reason", reason);

    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err())
        .contains(
            "Expected --reason without a phone, a long number or an e-mail address, but found what may be one: details of people don't belong there")
        .doesNotContain(reason);
  }

  @ParameterizedTest
  @ValueSource(strings = {"+1 212 555 0151", "mara@example.org", "desk 2", ""})
  void a_role_that_is_none_is_refused_and_not_repeated(String role) {
    CommandRun refused =
        withers("settle", NUMBER, "--as", "right-as-it-is", "--by", role, "--reason", "asked");

    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err())
        .startsWith("withers: Expected --by with a role of up to 40 letters such as \"front desk\"")
        .doesNotContain("555", "mara@");
  }

  @ParameterizedTest
  @ValueSource(strings = {"since 2026-02-27, and 27.02.2026 too", "flats 3 and 14, two keys"})
  void days_and_small_numbers_may_stand_in_a_reason(String reason) {
    assertThat(
            withers(
                    "settle",
                    NUMBER,
                    "--as",
                    "right-as-it-is",
                    "--by",
                    "front desk",
                    "--reason",
                    reason)
                .code())
        .isZero();
  }

  @Test
  void what_can_t_be_understood_is_refused_with_what_to_do() {
    assertThat(settle(NUMBER, "--as", "same-houshold").err())
        .contains("did you mean \"same-household\"?");
    assertThat(settle(NUMBER, "--as", "right-as-it-is", "--on", "2026-03-02").err())
        .contains("Expected --on with a day up to today, 2026-03-01, but found 2026-03-02");
    assertThat(settle(NUMBER, "--as", "right-as-it-is", "--until", "2026-02-01").err())
        .contains("Expected --until with the last day on which it holds, from 2026-03-01");
    assertThat(settle(NUMBER, "--as", "one-animal").err())
        .contains("Expected a follow-up about one number on two animals, but this one is not");
    assertThat(settle(NUMBER, "--as", "same-person", "--registry", "tidline").err())
        .contains("did you mean \"tideline\"?");
    assertThat(settle(NUMBER).code()).isEqualTo(2);
    assertThat(settle(NUMBER, "--as", "same-person", "--withdraw").code()).isEqualTo(2);
    assertThat(
            withers(
                    "settle",
                    NUMBER,
                    "--as",
                    "right-as-it-is",
                    "--by",
                    "desk",
                    "--reason",
                    "a".repeat(201))
                .err())
        .contains("Expected --reason with 1 to 200 characters, but found 201");
    assertThat(withers("run").out()).contains("One is to be followed up.");
  }
}
