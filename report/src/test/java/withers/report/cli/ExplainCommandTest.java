package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.report.Coast;

/** A clinic whose clients are not who is registered. Invented. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ExplainCommandTest {

  private static final String NUMBER = "999000000001003";

  @TempDir private Path folder;

  @BeforeEach
  void two_dogs_that_changed_hands() throws IOException {
    Coast.writeWorkspace(folder);
    Files.writeString(folder.resolve("withers.yaml"), "list-cap: 1\n", StandardOpenOption.APPEND);
    Coast.writePatients(folder);
    Coast.writeRegister(folder);
    write(
        "inbox/patients-2026-02-27.csv",
        """
        No,Chip,Seen,Client,Phone
        P-19,999000000001003,2025-06-01,Mara Linden,+1 212 555 0151
        P-20,999000000001011,2025-06-01,Ines Quay,+1 212 555 0152
        """);
    write(
        "inbox/register-2026-02-28.csv",
        """
        No,Chip,Since,Contact,Phone
        T-10,999000000001003,2022-05-01,Jonas Abel,+1 212 555 0161
        T-11,999000000001011,2022-05-01,Jonas Abel,+1 212 555 0161
        """);
    assertThat(CommandRun.of("run", "--workspace", folder.toString()).code()).isZero();
  }

  private void write(String name, String text) throws IOException {
    Coast.write(folder, name, text);
  }

  private CommandRun explain(String... words) {
    String[] args = new String[words.length + 3];
    args[0] = "explain";
    args[1] = "--workspace";
    args[2] = folder.toString();
    System.arraycopy(words, 0, args, 3, words.length);
    return CommandRun.of(args);
  }

  private String run() throws IOException {
    return Files.readString(folder.resolve("runs/latest")).strip();
  }

  @Test
  void tells_the_sentence_the_evidence_the_trail_the_contacts_and_the_priority()
      throws IOException {
    CommandRun told = explain(NUMBER, "contact-behind");

    assertThat(told.err()).isEmpty();
    assertThat(told.code()).isZero();
    assertThat(told.out())
        .matches("(?s)Follow-up [0-9A-Z]{4}-[0-9A-Z]{4}: contact-behind of " + NUMBER + ".*")
        .contains(
            ": Harbour Vets acts, by its record P-19; opened by this run (run "
                + run()
                + ", as of 2026-03-01)",
            "The rule:\n  The animal has a keeper; registries are current since the start;",
            "  2022-05-01 registered to: person A (in the records of Tideline), chip "
                + NUMBER
                + " [Tideline, record T-10, first stated 2026-02-28]\n",
            "  custodian since 2025-06-01, by a visit: person B (in the records of Harbour Vets)\n",
            "  person B (in the records of Harbour Vets) and person A (in the records of Tideline):"
                + " different\n",
            " before anything is compared\n",
            " after given name: another (-",
            " after address: not stated by both (+0.0)\n",
            " %: they are two people, who share too little for a household\n",
            "Its priority:\n  band this-month\n",
            " = expected harm 0.",
            "What would close it:\n  a registration to the keeper")
        .doesNotContain("Mara", "Jonas", "555", ".csv");
  }

  @Test
  void names_the_clients_of_the_organisation_that_it_is_for_and_nobody_else() {
    CommandRun told = explain(NUMBER, "contact-behind", "--for", "harbour-vets");

    assertThat(told.out())
        .contains("person B (Mara Linden)", "patients-2026-02-27.csv:2")
        .doesNotContain("Jonas", "register-2026-02-28.csv", "555");
  }

  @Test
  void takes_the_reference_as_the_list_shows_it_and_says_what_keeps_it_out_of_sight()
      throws IOException {
    String list =
        Files.readString(folder.resolve("lists").resolve(run()).resolve("harbour-vets/list.csv"));
    String reference =
        list.lines().skip(1).findFirst().orElseThrow().split(",")[0].replace("\"", "");

    CommandRun listed = explain(reference.toLowerCase(java.util.Locale.ROOT));
    String both = explain(NUMBER).out() + explain("999 000 000 001 011").out();

    assertThat(listed.out())
        .startsWith("Follow-up " + reference)
        .contains("hides it:\n  nothing\nRun " + run() + " was made with:\n  rules ")
        .containsPattern("  parameters of matching built-in \\d+, [0-9a-f]{12}\n")
        .containsPattern("  profile of patients [0-9a-f]{12}, export of 2026-02-27\n");
    assertThat(both)
        .containsOnlyOnce("  it waits in the backlog of 2026-03-01, until others are settled\n");
  }

  @Test
  void what_this_run_closed_is_told_too() throws IOException {
    write(
        "inbox/register-2026-03-01.csv",
        """
        No,Chip,Since,Contact,Phone
        T-10,999000000001003,2026-02-28,Mara Linden,+1 212 555 0151
        T-11,999000000001011,2022-05-01,Jonas Abel,+1 212 555 0161
        """);
    assertThat(CommandRun.of("run", "--workspace", folder.toString()).code()).isZero();

    assertThat(explain(NUMBER).out())
        .contains(
            "closed by this run: the records no longer say so",
            "(in the records of Tideline): same\n");
  }

  @Test
  void what_the_run_does_not_tell_of_needs_a_look() throws IOException {
    assertThat(explain("ABCD-EFGH"))
        .isEqualTo(
            new CommandRun(
                1,
                "",
                "Run "
                    + run()
                    + " tells of no such follow-up: give the reference as a list shows it, or the number and the kind. \"withers trace NUMBER\" tells what the records say.\n"));
    assertThat(explain(NUMBER, "unregistered").code()).isEqualTo(1);
  }

  @Test
  void an_organisation_that_is_none_is_refused() {
    CommandRun refused = explain(NUMBER, "--for", "harbour-vet");

    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err()).contains("did you mean \"harbour-vets\"?");
  }
}
