package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.cli.SmallNetwork.Export.BEACON;
import static withers.report.cli.SmallNetwork.Export.PATIENTS;
import static withers.report.cli.SmallNetwork.Export.STAYS;
import static withers.report.cli.SmallNetwork.Export.TIDELINE;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.finding.RunResult;
import withers.point.Point;
import withers.reconcile.cli.RunStore;
import withers.report.cli.SentList.Answer;
import withers.report.mail.smtp.FaultyServer;
import withers.report.mail.smtp.FaultyServer.Stage;
import withers.testing.KillableJava;
import withers.workspace.WorkspacePaths;

/** Six months of a small network, lived through by the commands as users run them. */
final class SixMonths {
  static final LocalDate MARCH = LocalDate.of(2026, 3, 1);
  static final LocalDate APRIL = LocalDate.of(2026, 4, 1);
  static final LocalDate MAY = LocalDate.of(2026, 5, 1);
  static final LocalDate JUNE = LocalDate.of(2026, 6, 1);
  static final LocalDate JULY = LocalDate.of(2026, 7, 1);
  static final LocalDate AUGUST = LocalDate.of(2026, 8, 1);

  private static final String CLINIC = "post@harbour-vets.example.org";
  private static final String SHELTER = "post@dune-shelter.example.org";

  private final Path folder;
  private final FaultyServer server;
  private final SmallNetwork network;
  final List<RunResult> runs = new ArrayList<>();
  final List<CommandRun> imports = new ArrayList<>();
  final List<CommandRun> sendings = new ArrayList<>();
  CommandRun putOff;
  CommandRun arrived;

  /**
   * @param log the key {@code log} of the settings, or nothing
   */
  SixMonths(Path folder, FaultyServer server, String log) throws IOException {
    this.folder = folder;
    this.server = server;
    this.network = SmallNetwork.in(folder, server.port());
    Files.writeString(folder.resolve("withers.yaml"), log, StandardOpenOption.APPEND);
  }

  /** What began years ago: everybody gets a first list. */
  void march() throws IOException {
    network.state(
        PATIENTS,
        """
        P-1, 999000000001001, , 2025-06-01, , Mara Linden, +1 212 555 0151
        P-2, 999000000001002, , 2025-06-02, , Pia Lorne,   +1 212 555 0152
        P-3, 999000000001003, , 2025-06-03, , Ada Brook,   +1 212 555 0153
        P-4, 999000000001004, , 2025-06-04, , Ivo Tarn,    +1 212 555 0154
        P-6, 999000000001006, , 2025-06-06, , Lena Ostrow, +1 212 555 0156
        P-7, 999000000001007, , 2025-12-01, , Nia Corrin,  +1 212 555 0157
        P-8, 999000000001009, , 2025-06-08, 2026-02-10, Kira Vale, +1 212 555 0158
        P-9, 999000000001010, , 2025-06-09, , Rosa Fenn,   +1 212 555 0159
        """);
    network.state(
        STAYS,
        """
        S-1, 999000000001011, 2025-09-20, , , 2025-10-20, Otto Hale, +1 212 555 0161
        S-2, 999000000001008, 2025-09-21, Tom Reeve, +1 212 555 0177, 2025-10-21, Nia Corrin, +1 212 555 0157
        """);
    network.state(
        TIDELINE,
        """
        T-1, 999000000001001, 2022-05-01, Jonas Abel,  +1 212 555 0171
        T-2, 999000000001002, 2022-05-02, Emil Varga,  +1 212 555 0172
        T-3, 999000000001003, 2022-05-03, Hugo Stane,  +1 212 555 0173
        T-4, 999000000001004, 2022-05-04, Clara Wynn,  +1 212 555 0174
        T-6, 999000000001006, 2025-06-06, Lena Ostrow, +1 212 555 0156
        T-7, 999000000001007, 2020-05-07, Tom Reeve,   +1 212 555 0177
        T-9, 999000000001009, 2023-05-09, Kira Vale,   +1 212 555 0158
        T-11, 999000000001011, 2025-09-20, Dune Shelter, +1 212 555 0120
        """);
    network.state(
        BEACON,
        """
        B-8, 999000000001008, 2020-05-07, Tom Reeve,   +1 212 555 0177
        B-10, 999000000001010, 2022-05-10, Paul Gray,  +1 212 555 0170
        B-90, 99900000000199O, 2024-02-01, Vera Holm,  +1 212 555 0190
        """);
    judged(MARCH);
    send(MARCH);
  }

  /** The clinic's sheet comes back, twice; one follow-up is put off, and a client registers. */
  void april() throws IOException {
    SentList sheet = lists().get(2);
    Answer[] answers = {
      new Answer("P-1", "The registration has been put right", "2026-03-08", ""),
      new Answer("P-2", "The client was reached and will do it", "2026-03-09", ""),
      new Answer("P-3", "The client could not be reached", "2026-03-10", "")
    };
    comesBack("first-sheet.xlsx", sheet.filledIn("", answers));
    comesBack("first-sheet-again.xlsx", sheet.filledIn("sent once more", answers));
    putOff = snooze(sheet.about("P-4"));
    network.state(PATIENTS, "P-5, 999000000001005, , 2026-03-20, , Finn Arden, +1 212 555 0155");
    network.state(
        STAYS, "S-3, 999000000001012, 2026-02-20, , , 2026-03-10, Ines Quill, +1 212 555 0162");
    network.state(
        TIDELINE,
        """
        T-11, 999000000001011, 2026-03-12, Otto Hale, +1 212 555 0161
        T-12, 999000000001012, 2026-02-20, Dune Shelter, +1 212 555 0120
        """);
    judged(APRIL);
    send(APRIL);
  }

  private CommandRun snooze(String reference) {
    return withers(
        LocalDate.of(2026, 3, 10),
        "snooze",
        reference,
        "--until",
        "2026-05-15",
        "--by",
        "coordinator",
        "--reason",
        "abroad till May");
  }

  /** The mail server takes nothing on the first of the month, and everything on the second. */
  void may() throws IOException {
    network.state(TIDELINE, "T-1, 999000000001001, 2026-04-10, Mara Linden, +1 212 555 0151");
    network.state(PATIENTS, "P-10, 999000000001013, , 2026-04-10, , Gwen Sorrel, +1 212 555 0160");
    judged(MAY);
    server.answering(Stage.MAIL, Collections.nCopies(9, "451 try later").toArray(String[]::new));
    send(MAY);
    send(MAY.plusDays(1));
  }

  /**
   * Two chips turn out to be one dog's, a registration goes back to the shelter, and the program is
   * killed when the shelter's mail was taken and that is about to be written down.
   */
  void june() throws IOException {
    network.state(
        PATIENTS,
        "P-7, 999000000001007, 999000000001008, 2025-12-01, , Nia Corrin, +1 212 555 0157");
    network.state(TIDELINE, "T-11, 999000000001011, 2026-05-20, Dune Shelter, +1 212 555 0120");
    judged(JUNE);
    killedSending();
    send(JUNE);
    send(JUNE);
    arrived = withers(JUNE.plusDays(1), "deliveries", "--arrived", "dune-shelter");
  }

  private void killedSending() throws IOException {
    KillableJava process =
        CommandProcess.stoppingAt(
            Point.SEND_ANSWERED,
            CommandRun.hour(JUNE),
            List.of("report", "--send", "--yes", "--workspace", folder.toString()));
    assertThat(process.comesTo(Point.SEND_ANSWERED)).isTrue();
    process.kill();
  }

  /** Two sheets come back, and nobody is told anything new. */
  void july() throws IOException {
    comesBack(
        "shelter.csv",
        last(SHELTER)
            .filledInAsCsv(
                new Answer("S-3", "The registration has been put right", "2026-06-05", "")));
    comesBack(
        "clinic.xlsx",
        last(CLINIC)
            .filledIn(
                "",
                new Answer("P-2", "The client could not be reached", "2026-06-08", ""),
                new Answer("P-3", "", "2026-06-09", "2026-07-15"),
                new Answer("P-10", "The client was reached and will do it", "2026-06-10", "")));
    network.state(TIDELINE, "T-12, 999000000001012, 2026-06-04, Ines Quill, +1 212 555 0162");
    network.state(BEACON, "B-90, 999000000001990, 2024-02-01, Vera Holm, +1 212 555 0190");
    judged(JULY);
    send(JULY);
  }

  /** What is still open is brought to mind. */
  void august() throws IOException {
    network.state(TIDELINE, "T-7, 999000000001007, 2026-07-07, Nia Corrin, +1 212 555 0157");
    network.state(
        BEACON,
        """
        B-5, 999000000001005, 2026-07-08, Finn Arden, +1 212 555 0155
        B-8, 999000000001008, 2026-07-07, Nia Corrin, +1 212 555 0157
        """);
    judged(AUGUST);
    send(AUGUST);
  }

  /** All that the server took over. */
  List<SentList> lists() {
    return server.taken().stream().map(SentList::of).toList();
  }

  /** The last one that went to an address. */
  SentList last(String to) {
    return lists().stream()
        .filter(list -> list.to().equals(to))
        .reduce((one, next) -> next)
        .orElseThrow();
  }

  private void comesBack(String name, byte[] sheet) throws IOException {
    Files.write(folder.resolve("inbox").resolve(name), sheet);
  }

  CommandRun withers(LocalDate day, String command, String... more) {
    return CommandRun.on(
        day,
        Stream.concat(Stream.of(command, "--workspace", folder.toString()), Stream.of(more))
            .toArray(String[]::new));
  }

  /** What {@code explain} tells of a follow-up's life, with runs by their days alone. */
  String life(LocalDate day, String... words) {
    String told = withers(day, "explain", words).out();
    String begin = "Its life so far:\n";
    assertThat(told).contains(begin);
    return told.substring(told.indexOf(begin) + begin.length())
        .lines()
        .takeWhile(line -> line.startsWith("  "))
        .map(line -> line.strip().replaceFirst("(run [-0-9]{10})-[0-9a-f]+", "$1") + "\n")
        .collect(Collectors.joining());
  }

  private void judged(LocalDate day) throws IOException {
    network.export(day);
    imports.add(withers(day, "ingest"));
    assertThat(withers(day, "reconcile")).matches(run -> run.code() == 0);
    runs.add(new RunStore(new WorkspacePaths(folder).runs()).latest().orElseThrow());
  }

  private CommandRun send(LocalDate day) {
    CommandRun sent = withers(day, "report", "--send", "--yes");
    sendings.add(sent);
    return sent;
  }
}
