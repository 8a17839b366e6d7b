package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.cli.SmallNetwork.Export.BEACON;
import static withers.report.cli.SmallNetwork.Export.PATIENTS;
import static withers.report.cli.SmallNetwork.Export.STAYS;
import static withers.report.cli.SmallNetwork.Export.TIDELINE;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import withers.log.EventLog;
import withers.mailing.Mailings;
import withers.point.Point;
import withers.point.Points;
import withers.report.cli.SentList.Answer;
import withers.report.schedule.cli.OneNight;
import withers.testing.KillableJava;

/**
 * A night of a small network: four exports and a sheet come in, animals are judged, lists are made
 * twice, by two jobs, and mailed through GreenMail. It is killed at a named point and begun again.
 * An ordinary build takes a few points; {@code -Dkill.points=all} takes all.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Tag("long")
class KilledNightTest {
  private static final LocalDate MARCH = LocalDate.of(2026, 3, 1);
  private static final LocalDate APRIL = LocalDate.of(2026, 4, 1);

  /** The points at which most would be lost. */
  private static final Set<Point> FEW =
      EnumSet.of(
          Point.ANSWERS_BEFORE_MARKER,
          Point.RUN_AFTER_MARKER,
          Point.REPORT_FORMER_ASIDE,
          Point.SEND_PENDING,
          Point.SEND_ANSWERED,
          Point.JOB_DONE);

  /** All but the one that {@code UpgradeTest} kills at. */
  private static final Set<Point> OF_A_NIGHT =
      EnumSet.complementOf(EnumSet.of(Point.UPGRADE_BACKED_UP));

  private static final String JOBS =
      """
      schedule:
        nightly: {cron: 30 2 * * *, actions: [ingest, reconcile, report]}
        monthly: {cron: 0 3 1 * *, actions: [report, send]}
      """;

  @TempDir private static Path place;
  private static GreenMail server;
  private static Path template;
  private static Set<Point> reached;
  private static NightsEnd undisturbed;

  @BeforeAll
  static void lives_through_a_month_and_an_undisturbed_night() throws Exception {
    server = new GreenMail(new ServerSetup(0, "localhost", ServerSetup.PROTOCOL_SMTP));
    server.start();
    template = Files.createDirectory(place.resolve("template"));
    SmallNetwork network = SmallNetwork.in(template, server.getSmtp().getPort());
    Files.writeString(template.resolve("withers.yaml"), JOBS, StandardOpenOption.APPEND);
    Files.writeString(
        template.resolve("sources/patients.yaml"),
        "limits: {rejects: 50 %}\n",
        StandardOpenOption.APPEND);
    OneNight.of(template, CommandRun.hour(MARCH.minusDays(1)), Points.NONE);
    march(network);
    OneNight.of(template, CommandRun.hour(MARCH), Points.NONE);
    april(network);
    server.purgeEmailFromAllMailboxes();

    Path folder = copy("undisturbed");
    reached = Collections.synchronizedSet(EnumSet.noneOf(Point.class));
    assertThat(OneNight.of(folder, night(), reached::add))
        .anyMatch(line -> line.contains("monthly: ended with 0 (DONE)"));
    undisturbed = NightsEnd.of(folder, night(), server);
  }

  @AfterAll
  static void stops_the_server() {
    server.stop();
  }

  @BeforeEach
  void empties_the_mailboxes() throws Exception {
    server.purgeEmailFromAllMailboxes();
  }

  private static Instant night() {
    return CommandRun.hour(APRIL);
  }

  private static void march(SmallNetwork network) throws IOException {
    network.fallsBehind();
    network.state(PATIENTS, "P-3, 999000000001003, , 2025-06-03, , Ada Brook,   +1 212 555 0153");
    network.state(TIDELINE, "T-11, 999000000001011, 2025-09-20, Dune Shelter, +1 212 555 0120");
    network.state(BEACON, "B-3, 999000000001003, 2022-05-03, Hugo Stane,  +1 212 555 0173");
    network.export(MARCH);
  }

  /**
   * A sheet comes back; one follow-up is settled by a record, one is new, one row can't be read.
   */
  private static void april(SmallNetwork network) throws Exception {
    SentList sheet =
        Mailbox.of(server).stream()
            .filter(mail -> mail.to().contains("harbour"))
            .findFirst()
            .orElseThrow();
    Files.write(
        template.resolve("inbox/sheet.xlsx"),
        sheet.filledIn("", new Answer("P-1", "The client could not be reached", "2026-03-10", "")));
    network.state(
        PATIENTS,
        """
        P-4, 999000000001004, , 2026-01-20, , Ivo Tarn, +1 212 555 0154
        P-5, 99900000000100, , 2026-03-20, , Lena Ostrow, +1 212 555 0156
        """);
    network.state(
        STAYS, "S-2, 999000000001012, 2025-12-01, , , 2026-01-10, Ines Quill, +1 212 555 0162");
    network.state(
        TIDELINE,
        """
        T-2, 999000000001002, 2026-03-12, Pia Lorne,   +1 212 555 0152
        T-12, 999000000001012, 2025-12-01, Dune Shelter, +1 212 555 0120
        """);
    network.state(BEACON, "B-4, 999000000001004, 2021-05-03, Clara Wynn,  +1 212 555 0174");
    network.export(APRIL);
  }

  private static Path copy(String name) throws IOException {
    Path to = place.resolve(name);
    try (Stream<Path> files = Files.walk(template)) {
      for (Path file : files.toList()) {
        Files.copy(
            file,
            to.resolve(template.relativize(file).toString()),
            java.nio.file.StandardCopyOption.COPY_ATTRIBUTES);
      }
    }
    return to;
  }

  @Test
  void a_night_comes_to_every_point() {
    assertThat(reached).containsExactlyInAnyOrderElementsOf(OF_A_NIGHT);
    assertThat(undisturbed.mails()).hasSizeGreaterThan(1);
    assertThat(undisturbed.quarantined()).isNotEmpty();
  }

  static Stream<Point> points() {
    boolean isAll = "all".equals(System.getProperty("kill.points"));
    return OF_A_NIGHT.stream().filter(point -> isAll || FEW.contains(point));
  }

  @ParameterizedTest
  @MethodSource("points")
  void killed_at_a_point_and_begun_again_it_ends_as_if_nothing_had_happened(Point point)
      throws Exception {
    Path folder = copy(point.name());
    KillableJava process = OneNight.stoppingAt(point, folder, night());
    assertThat(process.comesTo(point)).isTrue();
    process.kill();

    OneNight.of(folder, night(), Points.NONE);
    tellOfUnsureMails(folder);

    NightsEnd.of(folder, night(), server).assertIsAs(undisturbed);
  }

  /** A person looks whether they arrived, and says so; those that did not are sent. */
  private static void tellOfUnsureMails(Path folder) throws Exception {
    String workspace = folder.toString();
    for (String recipient : unsure(folder)) {
      boolean hasIt = Mailbox.of(server).stream().anyMatch(mail -> mail.to().contains(recipient));
      CommandRun.on(
          APRIL, "deliveries", hasIt ? "--arrived" : "--lost", recipient, "--workspace", workspace);
    }
    assertThat(CommandRun.on(APRIL, "report", "--send", "--yes", "--workspace", workspace).code())
        .isLessThan(2);
  }

  private static List<String> unsure(Path folder) {
    try (EventLog log = NightsEnd.log(folder)) {
      return Mailings.read(log.snapshot()).unsure().stream()
          .map(one -> one.recipient().value())
          .toList();
    }
  }
}
