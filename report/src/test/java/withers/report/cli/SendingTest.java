package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.report.mail.smtp.FaultyServer;
import withers.report.mail.smtp.FaultyServer.Stage;

/** Sending from the command line, to a server on this machine. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SendingTest {
  private static final String MADE =
      """
      Run 2026-03-01-0123abcd, as of 2026-03-01: 8 follow-ups
        Dune Shelter: 1 (0 new, 1 still open), 0 settled: lists/2026-03-01-0123abcd/dune-shelter/list.html
        Harbour Vets: 7 (5 new, 2 still open), 1 settled: lists/2026-03-01-0123abcd/harbour-vets/list.html
      Overview: lists/2026-03-01-0123abcd/overview.html
      Mail: 2 ready in outbox/2026-03-01-0123abcd
      """;
  private static final String OFFERED =
      """
      Mail: 2 of 2 to be sent
        dune-shelter: 1 (0 new, 1 still open), 0 settled; its first mail
        harbour-vets: 7 (5 new, 2 still open), 1 settled; its first mail
      """;

  @TempDir private Path folder;
  private FaultyServer server;
  private MailingWorkspace workspace;

  @BeforeEach
  void makes_a_workspace_with_a_run_and_a_server() throws IOException {
    server = FaultyServer.plain();
    workspace = MailingWorkspace.in(folder, server.port());
  }

  @AfterEach
  void stops_the_server() throws IOException {
    server.close();
  }

  @Test
  void without_a_terminal_and_without_yes_it_shows_who_would_get_what_and_refuses() {
    CommandRun refused = send();

    assertThat(refused)
        .isEqualTo(
            new CommandRun(
                2,
                MADE + OFFERED,
                """
                Type yes to send 2 mails.
                withers: Expected somebody to say yes, but found no terminal: nothing was sent. Add --yes to send without being asked
                "withers report --help" explains it.
                """));
    assertThat(server.taken()).isEmpty();
  }

  @Test
  void a_schedule_says_yes_beforehand_and_the_next_time_there_is_nothing_to_send() {
    CommandRun first = send("--yes");

    assertThat(first)
        .isEqualTo(
            new CommandRun(
                0,
                MADE
                    + OFFERED
                    + """
                        dune-shelter: accepted (250 2.0.0 queued for (address))
                        harbour-vets: accepted (250 2.0.0 queued for (address))
                      Mail: 2 of 2 accepted
                      """,
                ""));
    assertThat(server.taken())
        .map(FaultyServer.Taken::to)
        .containsExactly("post@dune-shelter.example.org", "post@harbour-vets.example.org");

    CommandRun again = send("--yes");

    assertThat(again.code()).isZero();
    assertThat(again.out())
        .contains(
            "Mail: 0 of 2 to be sent\n",
            "  harbour-vets: 7 (5 new, 2 still open), 1 settled; not sent: it has this list\n");
    assertThat(server.taken()).hasSize(2);
  }

  @Test
  void somebody_at_the_terminal_is_asked() {
    CommandRun no = CommandRun.with(() -> Optional.of("no"), time -> {}, command());
    assertThat(no.code()).isZero();
    assertThat(no.err()).isEqualTo("Type yes to send 2 mails.\nNothing was sent.\n");
    assertThat(server.taken()).isEmpty();

    CommandRun yes = CommandRun.with(() -> Optional.of(" yes "), time -> {}, command());
    assertThat(yes.code()).isZero();
    assertThat(yes.err()).isEqualTo("Type yes to send 2 mails.\n");
    assertThat(server.taken()).hasSize(2);
  }

  @Test
  void what_was_refused_is_told_ends_with_7_and_is_tried_again_the_next_time() {
    server.answering("post@dune-shelter.example.org", Stage.RCPT, "550 no such user");

    CommandRun first = send("--yes");

    assertThat(first.code()).isEqualTo(7);
    assertThat(first.out())
        .endsWith(
            """
              dune-shelter: refused (550 no such user)
              harbour-vets: accepted (250 2.0.0 queued for (address))
            Mail: 1 of 2 accepted
            """);
    assertThat(send("--yes").code()).isZero();
    assertThat(server.taken()).hasSize(2);
  }

  @Test
  void what_nobody_is_sure_of_waits_for_a_word_of_the_operator() {
    server.answering("post@dune-shelter.example.org", Stage.DOT, FaultyServer.DROP);
    String unsure =
        "Nobody knows whether dune-shelter got the list of run 2026-03-01-0123abcd: the connection ended"
            + " before the server's answer came. It is not sent again. Ask them, and then tell with"
            + " \"withers deliveries --arrived dune-shelter\" or \"--lost dune-shelter\".\n";

    assertThat(send("--yes")).matches(run -> run.code() == 7 && run.err().equals(unsure));
    assertThat(send("--yes")).matches(run -> run.code() == 7 && run.err().equals(unsure));
    assertThat(deliveries())
        .isEqualTo(
            new CommandRun(
                7,
                """
                2026-03-01  2026-03-01-0123abcd  dune-shelter: unsure (the connection ended before the server's answer came)
                2026-03-01  2026-03-01-0123abcd  harbour-vets: accepted (250 2.0.0 queued for (address))
                """,
                unsure));
    assertThat(server.taken()).hasSize(2);

    assertThat(deliveries("--lost", "dune-shelter"))
        .isEqualTo(
            new CommandRun(
                0,
                "2026-03-01  2026-03-01-0123abcd  dune-shelter: lost (the operator found out)\n",
                ""));
    assertThat(send("--yes").code()).isZero();
    assertThat(server.taken()).hasSize(3);
  }

  @Test
  void what_arrived_after_all_is_not_sent_again() {
    server.answering("post@dune-shelter.example.org", Stage.DOT, FaultyServer.DROP);
    send("--yes");

    assertThat(deliveries("--arrived", "dune-shelter").code()).isZero();
    assertThat(send("--yes").out())
        .contains("dune-shelter: 1 (0 new, 1 still open), 0 settled; not sent: it has this list");
  }

  @Test
  void nobody_can_be_sure_about_an_organisation_that_has_no_unsure_mail() {
    assertThat(deliveries("--lost", "harbour-vets"))
        .isEqualTo(
            new CommandRun(
                2,
                "",
                """
                withers: Expected an organisation with a mail that nobody is sure of, but found "harbour-vets": withers deliveries lists all
                "withers deliveries --help" explains it.
                """));
  }

  @Test
  void the_next_list_goes_out_when_it_has_news_and_else_when_the_interval_is_over()
      throws IOException {
    send("--yes");
    workspace.keep(MailingWorkspace.next(workspace.sample(), 7));

    CommandRun early = CommandRun.after(7, command("--yes"));

    assertThat(early.code()).isZero();
    assertThat(early.out())
        .contains(
            """
            Mail: 1 of 2 to be sent
              dune-shelter: 1 (0 new, 1 still open), 0 settled; not sent: nothing new since its mail of 2026-03-01, a reminder is due on 2026-03-29
              harbour-vets: 7 (1 new, 6 still open), 1 settled; new since its mail of 2026-03-01
            """);
    assertThat(server.taken()).hasSize(3);
    assertThat(server.taken().get(2).content())
        .contains(
            "7 animals to follow up. 1 new, 6 still open, 1 settled since the list of 1 =\r\nMarch 2026.");

    CommandRun late = CommandRun.after(28, command("--yes"));

    assertThat(late.out())
        .contains(
            """
            Mail: 1 of 2 to be sent
              dune-shelter: 1 (0 new, 1 still open), 0 settled; a reminder, as its last mail is of 2026-03-01
              harbour-vets: 7 (1 new, 6 still open), 1 settled; not sent: it has this list
            """);
    assertThat(server.taken().get(3).content())
        .contains("Nothing here is new. This is a reminder of what is still open.");
  }

  @Test
  void the_coordinator_gets_the_overview_at_first_and_then_when_the_interval_is_over()
      throws IOException {
    workspace.setMail(MailingWorkspace.server(server.port()));
    assertThat(send("--yes").out())
        .contains("Mail: 3 of 3 to be sent\n  coast-network: the overview; its first mail\n");
    assertThat(server.taken().get(0).to()).isEqualTo("post@coast-network.example.org");
    assertThat(server.taken().get(0).content())
        .contains("Subject: Overview of Coast Network, 1 March");
    workspace.keep(MailingWorkspace.next(workspace.sample(), 7));

    assertThat(CommandRun.after(7, command("--yes")).out())
        .contains(
            "coast-network: the overview; not sent: nothing new since its mail of 2026-03-01, a reminder is due on 2026-03-29\n");
    assertThat(CommandRun.after(28, command("--yes")).out())
        .contains("coast-network: the overview; a reminder, as its last mail is of 2026-03-01\n");
  }

  @Test
  void details_can_stay_at_home() throws IOException {
    workspace.setMail(
        "details: left-out\n  overview: kept\n  " + MailingWorkspace.server(server.port()));

    assertThat(send("--yes").out())
        .contains(
            "harbour-vets: 7 (5 new, 2 still open), 1 settled, without the list; its first mail");

    assertThat(server.taken()).hasSize(2);
    assertThat(server.taken().get(1).content())
        .contains("Mails of this network hold no details. Please ask Coast Network")
        .doesNotContain("Mara", "Linden", "Biscuit", "999", "multipart");
  }

  @Test
  void a_workspace_without_a_server_is_told_how_to_state_one() throws IOException {
    workspace.setMail("reminder-days: 28");

    assertThat(send("--yes"))
        .isEqualTo(
            new CommandRun(
                3,
                "",
                "withers: Expected a server to send mail through, but found none (withers.yaml): state it"
                    + " as \"mail: {server: {host: ...}}\"\n"));
  }

  @Test
  void a_password_that_others_can_read_stops_it_before_anything_is_made() throws IOException {
    workspace.setMail("server: {host: localhost, user: lists, password-file: mail.password}");
    Path file = Files.writeString(folder.resolve("mail.password"), "secret\n");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));

    CommandRun refused = send("--yes");

    assertThat(refused.code()).isEqualTo(3);
    assertThat(refused.err())
        .startsWith("withers: Expected a password file that only its owner can read")
        .doesNotContain("secret");
  }

  @Test
  void a_server_that_is_away_is_named_and_all_is_left_for_another_time() throws IOException {
    server.close();

    CommandRun away = send("--yes");

    assertThat(away.code()).isEqualTo(7);
    assertThat(away.out())
        .endsWith(
            """
              dune-shelter: not tried
              harbour-vets: not tried
            Mail: 0 of 2 accepted
            """);
    assertThat(away.err())
        .isEqualTo(
            "Expected of the mail server, localhost, port %d, an answer, but found none. Look at host and port.\n"
                .formatted(server.port()));
  }

  @Test
  void JSON_stays_alone_on_standard_output() {
    CommandRun sent = send("--yes", "--json");

    assertThat(sent.out()).startsWith("{").endsWith("}\n");
    assertThat(sent.err()).startsWith(OFFERED).endsWith("Mail: 2 of 2 accepted\n");
  }

  @Test
  void yes_means_nothing_without_send() {
    assertThat(CommandRun.of("report", "--workspace", folder.toString(), "--yes").code())
        .isEqualTo(2);
  }

  private CommandRun send(String... more) {
    return CommandRun.of(command(more));
  }

  private CommandRun deliveries(String... more) {
    return CommandRun.of(workspace.command("deliveries", more));
  }

  private String[] command(String... more) {
    return workspace.command(
        "report", Stream.concat(Stream.of("--send"), Stream.of(more)).toArray(String[]::new));
  }
}
