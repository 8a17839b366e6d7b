package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import withers.report.mail.smtp.FaultyServer;
import withers.report.schedule.cli.SchedulingProcess;
import withers.testing.AnotherJava;

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
    Process first = schedule("2026-03-01T02:29:54Z");
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
    Process sending = schedule("2026-03-01T02:59:54Z");
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
  void it_is_seen_from_outside_and_the_operator_is_told_of_a_job_that_fails() throws Exception {
    int port = freePort();
    setSchedule(
        """
          nightly: {cron: 30 2 * * *, actions: [ingest, report]}
          weekly: {cron: 0 3 * * 1, actions: [report]}
        watch: {port: %d, operator: night@example.org}
        """
            .formatted(port));
    Process process = schedule("2026-03-01T02:29:54Z");
    try (BufferedReader lines = process.inputReader(StandardCharsets.UTF_8)) {
      readUntil("seen at 127.0.0.1, port " + port, lines);
      assertThat(get(port, "livez")).isEqualTo("200 alive\n");
      assertThat(get(port, "readyz")).isEqualTo("200 ready\n");
      assertThat(get(port, "other")).startsWith("404");
      Files.delete(folder.resolve("sources"));
      readUntil("nightly: ended with 6 (STORAGE), next on 2026-03-02", lines);
      readUntil("nightly: the operator's mail was accepted", lines);
    }
    waitFor(() -> get(port, "readyz").equals("503 failed last: nightly\n"));

    assertThat(get(port, "metrics"))
        .contains("withers_job_last_exit_code{job=\"nightly\"} 6.0")
        .contains("withers_job_last_success_seconds{job=\"nightly\"} 0.0")
        .contains("withers_job_next_due_seconds{job=\"nightly\"} 1.7724186E9") // 2 March, 02:30
        .contains("withers_command_seconds_count{command=\"ingest\"} 1")
        .contains("withers_run_findings{kind=\"contact-behind\"}")
        .doesNotContain("withers_command_seconds_count{command=\"report\"}");
    terminate(process);

    assertThat(server.taken()).hasSize(1);
    FaultyServer.Taken mail = server.taken().get(0);
    assertThat(mail.to()).isEqualTo("night@example.org");
    assertThat(Canary.mail(mail.content().getBytes(StandardCharsets.UTF_8)))
        .contains("the job nightly failed (STORAGE)")
        .contains("The job nightly ended with 6 (STORAGE): Something can't be read or written")
        .contains("  withers: Expected a file, but found none")
        .contains("  withers ingest --workspace " + folder)
        .contains("By itself it is due next on 2026-03-02 02:30:00 (UTC).");
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0)) {
      return socket.getLocalPort();
    }
  }

  private static String get(int port, String page) {
    try {
      HttpResponse<String> answer =
          HttpClient.newHttpClient()
              .send(
                  HttpRequest.newBuilder(URI.create("http://127.0.0.1:%d/%s".formatted(port, page)))
                      .build(),
                  HttpResponse.BodyHandlers.ofString());
      return answer.statusCode() + " " + answer.body();
    } catch (IOException | InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The test's time limit ends the waiting. */
  private static void waitFor(BooleanSupplier come) throws InterruptedException {
    while (!come.getAsBoolean()) {
      TimeUnit.MILLISECONDS.sleep(50);
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
