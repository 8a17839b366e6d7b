package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import withers.report.mail.smtp.FaultyServer;
import withers.report.schedule.cli.SchedulingProcess;

/** The schedule in a Java of its own, with signals as a service manager sends them. */
@Timeout(value = 40, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ScheduleCommandTest {
  private static final int BY_SIGNAL = 143;

  @TempDir private Path folder;
  private final List<Process> processes = new ArrayList<>();
  private final List<String> log = new ArrayList<>();
  private FaultyServer server;
  private MailingWorkspace workspace;

  @BeforeEach
  void makes_a_workspace_with_a_run_and_a_server() throws IOException {
    server = FaultyServer.plain();
    workspace = MailingWorkspace.in(folder, server.port());
    Files.createDirectory(folder.resolve("sources"));
  }

  @AfterEach
  void ends_everything() throws IOException {
    processes.forEach(Process::destroyForcibly);
    server.close();
  }

  private void setSchedule(String jobs) throws IOException {
    Path file = folder.resolve("withers.yaml");
    Files.writeString(file, Files.readString(file) + "schedule:\n" + jobs);
  }

  private Process schedule(String now, String... more) throws IOException {
    List<String> args = new ArrayList<>(List.of(now));
    args.addAll(List.of(workspace.command("schedule", more)));
    Process process = AnotherJava.running(SchedulingProcess.class, args.toArray(String[]::new));
    processes.add(process);
    return process;
  }

  /** Reads on until a line holds this. */
  private void readUntil(String words, BufferedReader lines) throws IOException {
    String line = lines.readLine();
    while (line != null && !line.contains(words)) {
      log.add(line);
      assertThat(line).as("%s after %s", words, log).doesNotContain("ended with");
      line = lines.readLine();
    }
    assertThat(line).as("%s after %s", words, log).isNotNull();
    log.add(line);
  }

  private static void terminate(Process process) throws InterruptedException {
    long before = System.nanoTime();
    process.toHandle().destroy(); // the process' own method closes its output, too
    assertThat(process.waitFor(10, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).isEqualTo(BY_SIGNAL);
    assertThat(Duration.ofNanos(System.nanoTime() - before)).isLessThan(Duration.ofSeconds(10));
  }

  @Test
  void what_is_due_is_done_in_time_and_what_was_missed_at_start_and_a_signal_ends_it()
      throws Exception {
    setSchedule("  nightly: {cron: 30 2 * * *, actions: [ingest, report]}\n");
    Process first = schedule("2026-03-01T02:29:57Z");
    try (BufferedReader lines = first.inputReader(StandardCharsets.UTF_8)) {
      readUntil("nightly: ended with 0 (DONE), next on 2026-03-02 02:30:00 (UTC)", lines);
      assertThat(log)
          .anyMatch(
              line -> line.endsWith("nightly: ingest, report, next on 2026-03-01 02:30:00 (UTC)"))
          .anyMatch(line -> line.endsWith("nightly: begun, due at 2026-03-01 02:30:00 (UTC)"))
          .anyMatch(line -> line.endsWith("nightly: Nothing to import."))
          .anyMatch(line -> line.contains("nightly: Run 2026-03-01-0123abcd, as of"));

      CommandRun second = CommandRun.of(workspace.command("schedule"));
      assertThat(second.code()).isEqualTo(5);
      assertThat(second.err()).contains("running \"schedule\" since 2026-03-01T02:29:5");

      terminate(first);
      readUntil("schedule: stopped", lines);
    }

    Process missed = schedule("2026-03-05T12:00:00Z", "--json-log");
    try (BufferedReader lines = missed.inputReader(StandardCharsets.UTF_8)) {
      readUntil("ended with 0 (DONE), next on 2026-03-06", lines);
      assertThat(log.get(log.size() - 1))
          .matches(
              "\\{\"at\":\"2026-03-05T12:00:[0-9.]+Z\",\"level\":\"info\",\"job\":\"nightly\",\"start\":\"2026-03-05T02:30:00Z\",\"code\":0,\"text\":\"ended with 0 .*\"}");
      terminate(missed);
    }
    assertThat(log.stream().filter(line -> line.contains("ended with"))).hasSize(2);
    assertThat(folder.resolve("schedule/nightly.json")).content().contains("2026-03-05T02:30:00Z");
  }

  @Test
  void a_signal_ends_it_between_two_mails_and_the_next_start_sends_the_rest() throws Exception {
    setSchedule("  monthly: {cron: 0 3 1 * *, actions: [report, send]}\n");
    Process sending = schedule("2026-03-01T02:59:57Z");
    server.atTheEnd(() -> signal(sending));
    try (BufferedReader lines = sending.inputReader(StandardCharsets.UTF_8)) {
      readUntil("monthly: stopped: it is begun again", lines);
    }
    assertThat(sending.waitFor(10, TimeUnit.SECONDS)).isTrue();
    assertThat(sending.exitValue()).isEqualTo(BY_SIGNAL);
    assertThat(server.taken()).hasSize(1);
    server.atTheEnd(() -> {});

    Process rest = schedule("2026-03-01T03:01:00Z");
    try (BufferedReader lines = rest.inputReader(StandardCharsets.UTF_8)) {
      readUntil("monthly: ended with 0 (DONE), next on 2026-04-01", lines);
    }
    terminate(rest);
    assertThat(server.taken())
        .map(FaultyServer.Taken::to)
        .containsExactly("post@dune-shelter.example.org", "post@harbour-vets.example.org");
  }

  /** The server answers a good while after the signal: the mail's answer is waited for. */
  private static void signal(Process process) {
    process.toHandle().destroy(); // the process' own method closes its output, too
    try {
      TimeUnit.MILLISECONDS.sleep(500);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void without_a_job_there_is_nothing_to_stay_up_for() {
    CommandRun run = CommandRun.of(workspace.command("schedule"));

    assertThat(run)
        .isEqualTo(
            new CommandRun(
                3,
                "",
                "withers: Expected a job, but found none (withers.yaml): state one as \"schedule:"
                    + " {nightly: {cron: 30 2 * * *, actions: [ingest]}}\"\n"));
  }
}
