package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.point.Point;
import withers.report.Main;
import withers.report.mail.smtp.FaultyServer;
import withers.testing.AnotherJava;
import withers.testing.KillableJava;

/** A sending that is killed: the next start says which mail nobody is sure of, and repeats none. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class KilledSendingTest {
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
  void killed_between_the_server_s_answer_and_its_record() throws Exception {
    KillableJava process =
        CommandProcess.stoppingAt(
            Point.SEND_ANSWERED,
            CommandRun.NOW,
            List.of(workspace.command("report", "--send", "--yes")));
    assertThat(process.comesTo(Point.SEND_ANSWERED)).isTrue();
    process.kill();

    assertReportedAndNotRepeated();
  }

  @Test
  void killed_when_the_mail_is_there_and_before_the_server_answers() throws Exception {
    CompletableFuture<Process> process = new CompletableFuture<>();
    server.atTheEnd(() -> process.join().destroyForcibly().onExit().join());
    process.complete(
        AnotherJava.running(Main.class, workspace.command("report", "--send", "--yes")));
    assertThat(process.join().waitFor()).isNotZero();
    server.atTheEnd(() -> {});

    assertReportedAndNotRepeated();
  }

  private void assertReportedAndNotRepeated() {
    assertThat(server.taken())
        .map(FaultyServer.Taken::to)
        .containsExactly("post@dune-shelter.example.org");

    for (int start = 0; start < 2; start++) {
      CommandRun next = CommandRun.of(workspace.command("report", "--send", "--yes"));
      assertThat(next.code()).isEqualTo(7);
      assertThat(next.err())
          .isEqualTo(
              "Nobody knows whether dune-shelter got the list of run 2026-03-01-0123abcd: the program was"
                  + " ended before the answer was written. It is not sent again. Ask them, and then"
                  + " tell with \"withers deliveries --arrived dune-shelter\" or \"--lost dune-shelter\".\n");
    }
    assertThat(server.taken())
        .map(FaultyServer.Taken::to)
        .containsExactly("post@dune-shelter.example.org", "post@harbour-vets.example.org");
  }
}
