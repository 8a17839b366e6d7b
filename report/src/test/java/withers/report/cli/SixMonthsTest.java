package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.TestInstance.Lifecycle.PER_CLASS;
import static withers.report.cli.SixMonths.AUGUST;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import withers.cases.Answered;
import withers.cases.CaseEvent;
import withers.cases.CaseKey;
import withers.cases.Reference;
import withers.codec.Streams;
import withers.finding.RunResult;
import withers.log.EventLog;
import withers.report.mail.smtp.FaultyServer;
import withers.workspace.Workspace;

/**
 * Six months of a small network: lists go out, sheets come back, the mail server is away, the
 * program is killed, two chips turn out to be one dog's. Nothing is sent twice, nothing is lost,
 * and each follow-up's life can be told.
 */
@TestInstance(PER_CLASS)
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SixMonthsTest {
  private Path folder;
  private FaultyServer server;
  private SixMonths months;
  private List<SentList> mails;

  @BeforeAll
  void lives_through_them(@TempDir Path place) throws IOException {
    folder = place;
    server = FaultyServer.plain();
    months = new SixMonths(folder, server, log());
    months.march();
    months.april();
    months.may();
    months.june();
    months.july();
    months.august();
    mails = months.lists();
  }

  /** What the settings say of the log. */
  String log() {
    return "";
  }

  @AfterAll
  void stops_the_server() throws IOException {
    server.close();
  }

  @Test
  void each_list_goes_out_once() {
    assertThat(mails).extracting(SentList::id).doesNotHaveDuplicates();
    assertThat(mails.stream().flatMap(mail -> mail.lists().stream()))
        .extracting(list -> list.replaceFirst("-[0-9a-f]{12}$", ""))
        .containsExactly(
            "beacon 2026-03-01",
            "dune-shelter 2026-03-01",
            "harbour-vets 2026-03-01",
            "harbour-vets 2026-04-01",
            "beacon 2026-05-01",
            "dune-shelter 2026-05-01",
            "harbour-vets 2026-05-01",
            "dune-shelter 2026-06-01",
            "harbour-vets 2026-06-01",
            "dune-shelter 2026-08-01",
            "harbour-vets 2026-08-01");
  }

  @Test
  void nothing_is_told_as_new_twice_unless_it_was_opened_again_in_between() {
    List<String> news = new ArrayList<>();
    Set<String> told = new TreeSet<>();
    for (RunResult run : months.runs) {
      run.opened().forEach(key -> told.remove(Reference.of(key)));
      mailsOf(run)
          .flatMap(mail -> mail.marked("New").stream())
          .forEach(reference -> assertThat(told.add(reference)).as(reference).isTrue());
      mailsOf(run).forEach(mail -> news.addAll(mail.marked("New")));
    }
    assertThat(Collections.frequency(news, last("dune-shelter").about("S-1"))).isEqualTo(2);
  }

  @Test
  void what_is_told_as_still_open_was_told_before_by_its_own_number_or_the_other_chip_s() {
    Set<String> told = new TreeSet<>();
    Set<String> untold = new TreeSet<>();
    for (SentList mail : mails) {
      mail.marked("Still open").stream().filter(one -> !told.contains(one)).forEach(untold::add);
      told.addAll(mail.marked("New"));
    }

    assertThat(untold).containsExactly(june("dune-shelter").about("S-2"));
  }

  private Stream<SentList> mailsOf(RunResult run) {
    return mails.stream().filter(mail -> mail.id().contains(run.id()));
  }

  private SentList june(String organisation) {
    return mailsOf(months.runs.get(3))
        .filter(mail -> mail.to().contains(organisation))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void every_finding_is_in_one_place() throws IOException {
    Set<Whereabouts.Place> places = new TreeSet<>();
    for (RunResult run : months.runs) {
      Whereabouts whereabouts = Whereabouts.of(run, folder);
      run.findings().forEach(one -> places.add(whereabouts.only(one.caseKey())));
      assertThat(whereabouts.listed()).isSubsetOf(references(run));
    }
    assertThat(places).containsExactly(Whereabouts.Place.values());
  }

  private static Set<String> references(RunResult run) {
    return run.findings().stream()
        .map(finding -> Reference.of(finding.caseKey()))
        .collect(Collectors.toSet());
  }

  @Test
  void what_is_open_stays_open_until_it_is_closed() {
    Set<String> open = new TreeSet<>();
    for (RunResult run : months.runs) {
      run.closed().forEach(key -> assertThat(open.remove(kept(key))).as(key.toString()).isTrue());
      run.opened().forEach(key -> assertThat(open.add(kept(key))).as(key.toString()).isTrue());
      assertThat(Stream.concat(run.opened().stream(), run.stillOpen().stream()))
          .extracting(SixMonthsTest::kept)
          .containsExactlyInAnyOrderElementsOf(open);
    }
  }

  /** What a follow-up keeps when its dog turns out to have a lower number, too. */
  private static String kept(CaseKey key) {
    return key.rule() + " " + key.recordKey();
  }

  @Test
  void each_answer_is_on_the_log_once_though_one_sheet_came_twice() {
    List<CaseEvent> answers = new ArrayList<>();
    try (EventLog log = Workspace.open(folder, Clock.systemUTC()).openLog()) {
      log.snapshot()
          .<CaseEvent>replay(
              Streams.CASES,
              0,
              (event, marker) -> {
                if (event instanceof Answered) {
                  answers.add(event);
                }
              });
    }
    assertThat(answers)
        .extracting(answer -> answer.key().recordKey())
        .containsExactlyInAnyOrder("P-1", "P-2", "P-3", "S-3", "P-2", "P-3", "P-10");
    assertThat(months.imports.get(1).out())
        .contains(
            "answers in first-sheet-again.xlsx: read 3 = 0 unchanged + 3 applied + 0 rejected; 2 rows without an answer\n",
            "answers in first-sheet.xlsx: read 3 = 3 unchanged + 0 applied + 0 rejected; 2 rows without an answer; nothing new\n");
    assertThat(months.imports).allMatch(run -> run.code() == 0 && run.err().isEmpty());
  }

  @Test
  void what_the_server_did_not_take_goes_out_the_next_day() {
    assertThat(months.sendings.get(2).code()).isEqualTo(7);
    assertThat(months.sendings.get(2).out())
        .endsWith(
            """
            Mail: 3 of 3 to be sent
              beacon: 1 (0 new, 1 still open), 0 settled; a reminder, as its last mail is of 2026-03-01
              dune-shelter: 2 (1 new, 1 still open), 1 settled; new since its mail of 2026-03-01
              harbour-vets: 5 (1 new, 4 still open), 1 settled; new since its mail of 2026-04-01
              beacon: postponed (451 try later)
              dune-shelter: postponed (451 try later)
              harbour-vets: postponed (451 try later)
            Mail: 0 of 3 accepted
            """);
    assertThat(months.sendings.get(3).code()).isZero();
    assertThat(months.sendings.get(3).out()).endsWith("Mail: 3 of 3 accepted\n");
  }

  @Test
  void a_mail_that_was_taken_when_the_program_was_killed_is_asked_about_and_not_repeated() {
    assertThat(months.sendings.get(4).out())
        .endsWith(
            """
            Mail: 1 of 3 to be sent
              beacon: 1 (0 new, 1 still open), 0 settled; not sent: nothing new since its mail of 2026-05-02, a reminder is due on 2026-06-16
              dune-shelter: 3 (1 new, 2 still open), 0 settled; not sent: nobody knows whether it has this list
              harbour-vets: 6 (1 new, 5 still open), 1 settled; new since its mail of 2026-05-02
              harbour-vets: accepted (250 2.0.0 queued for (address))
            Mail: 1 of 1 accepted
            """);
    assertThat(months.sendings.get(5).out()).contains("Mail: 0 of 3 to be sent\n");
    assertThat(months.sendings.subList(4, 6))
        .allMatch(sending -> sending.code() == 7)
        .allMatch(sending -> sending.err().startsWith("Nobody knows whether dune-shelter got the"));
    assertThat(months.arrived.code()).isZero();
  }

  @Test
  void a_month_without_news_is_a_month_without_mail() {
    assertThat(months.sendings.get(6).code()).isZero();
    assertThat(months.sendings.get(6).out())
        .endsWith(
            """
            Mail: 0 of 2 to be sent
              dune-shelter: 2 (0 new, 2 still open), 1 settled; not sent: nothing new since its mail of 2026-06-01, a reminder is due on 2026-07-16
              harbour-vets: 4 (0 new, 4 still open), 0 settled; not sent: nothing new since its mail of 2026-06-01, a reminder is due on 2026-07-16
            """);
  }

  @Test
  void what_is_still_open_when_the_interval_is_over_is_brought_to_mind() {
    assertThat(months.sendings.get(7).code()).isZero();
    assertThat(months.sendings.get(7).out())
        .endsWith(
            """
            Mail: 2 of 2 to be sent
              dune-shelter: 1 (0 new, 1 still open), 2 settled; a reminder, as its last mail is of 2026-06-01
              harbour-vets: 5 (0 new, 5 still open), 1 settled; a reminder, as its last mail is of 2026-06-01
              dune-shelter: accepted (250 2.0.0 queued for (address))
              harbour-vets: accepted (250 2.0.0 queued for (address))
            Mail: 2 of 2 accepted
            """);
  }

  @Test
  void the_life_of_one_that_was_answered_twice_and_asked_again() {
    assertThat(months.life(AUGUST, last("harbour-vets").about("P-3")))
        .isEqualTo(
            """
            2026-03-01 opened by run 2026-03-01
            2026-03-01 told of by mail
            2026-03-10 answered by front desk: "The client could not be reached"
            2026-04-01 told of by mail
            2026-05-02 told of by mail
            2026-06-01 told of by mail
            2026-06-09 answered by front desk: "Tried, nothing came of it yet", ask again on 2026-07-15
            2026-08-01 told of by mail
            """);
  }

  @Test
  void the_life_of_one_that_was_put_off() {
    String reference = last("harbour-vets").about("P-4");

    assertThat(months.putOff.out())
        .isEqualTo(
            "Put off: %s, contact-behind of 999000000001004, until 2026-05-15.\n"
                .formatted(reference));
    assertThat(months.life(AUGUST, reference))
        .isEqualTo(
            """
            2026-03-01 opened by run 2026-03-01
            2026-03-01 told of by mail
            2026-03-10 put off until 2026-05-15, by coordinator: "abroad till May"
            2026-04-01 told of by mail
            2026-05-02 told of by mail
            2026-06-01 told of by mail
            2026-08-01 told of by mail
            """);
  }

  @Test
  void the_life_of_one_that_was_put_right_and_came_back() {
    assertThat(months.life(AUGUST, last("dune-shelter").about("S-1")))
        .isEqualTo(
            """
            2026-03-01 opened by run 2026-03-01
            2026-03-01 told of by mail
            2026-04-01 closed by run 2026-04-01
            2026-06-01 opened again by run 2026-06-01
            2026-06-01 told of by mail
            2026-08-01 told of by mail
            """);
  }

  @Test
  void the_life_of_one_whose_dog_turned_out_to_have_two_chips() {
    assertThat(months.life(AUGUST, june("dune-shelter").about("S-2")))
        .isEqualTo(months.life(AUGUST, mails.get(1).about("S-2")))
        .isEqualTo(
            """
            2026-03-01 opened by run 2026-03-01
            2026-03-01 told of by mail
            2026-05-02 told of by mail
            2026-06-01 goes on under 999000000001007, record S-2, by run 2026-06-01
            2026-06-01 told of by mail
            2026-08-01 closed by run 2026-08-01
            """);
  }

  @Test
  void the_life_of_one_that_was_answered_and_then_put_right() {
    assertThat(months.life(AUGUST, mails.get(2).about("P-1")))
        .isEqualTo(
            """
            2026-03-01 opened by run 2026-03-01
            2026-03-01 told of by mail
            2026-03-08 answered by front desk: "The registration has been put right"
            2026-04-01 told of by mail
            2026-05-01 closed by run 2026-05-01
            """);
  }

  private SentList last(String organisation) {
    return months.last("post@" + organisation + ".example.org");
  }
}
