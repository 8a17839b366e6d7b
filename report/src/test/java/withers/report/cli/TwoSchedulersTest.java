package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import withers.point.Point;
import withers.report.mail.smtp.FaultyServer;
import withers.report.schedule.cli.StoppableScheduler;
import withers.report.schedule.postgres.PostgresServer;
import withers.testing.KillableJava;

/** Two schedules of one workspace, each in a Java of its own, that share a PostgreSQL database. */
@Tag("postgres")
@EnabledIf(
    value = "withers.report.schedule.postgres.PostgresServer#isHere",
    disabledReason = "no PostgreSQL here: apt-get install postgresql")
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class TwoSchedulersTest {
  private static final int LEASE_SECONDS = 2;

  @TempDir private Path folder;
  private final List<KillableJava> schedulers = new ArrayList<>();
  private FaultyServer mails;
  private PostgresServer database;
  private MailingWorkspace workspace;

  @BeforeEach
  void makes_a_workspace_with_a_run_and_servers() throws IOException {
    mails = FaultyServer.plain();
    database = PostgresServer.start();
    workspace = MailingWorkspace.in(folder, mails.port());
    Files.writeString(
        folder.resolve("withers.yaml"),
        "schedule: {monthly: {cron: 0 3 1 * *, actions: [report, send]}}\n"
            + database.settings(folder, LEASE_SECONDS),
        StandardOpenOption.APPEND);
  }

  @AfterEach
  void ends_everything() throws IOException {
    schedulers.forEach(KillableJava::kill);
    database.close();
    mails.close();
  }

  private KillableJava schedule(String now, String point) throws IOException {
    KillableJava scheduler = StoppableScheduler.start(now, point, workspace.command("schedule"));
    schedulers.add(scheduler);
    assertThat(scheduler.says("schedule: up")).isTrue();
    return scheduler;
  }

  @Test
  void what_is_due_is_done_by_one_of_them() throws Exception {
    KillableJava first = schedule("2026-03-01T02:59:50Z", KillableJava.NOWHERE);
    KillableJava second = schedule("2026-03-01T02:59:54Z", KillableJava.NOWHERE);

    firstToSay("monthly: ended with", first, second);
    first.kill();
    second.kill();

    assertThat(begun(first) + begun(second)).isEqualTo(1);
    assertThat(mails.taken()).hasSize(2);
    assertThat(database.owner("monthly"))
        .matches("process \\d+ on " + Pattern.quote(InetAddress.getLocalHost().getHostName()));
    CommandRun status = CommandRun.of(workspace.command("status"));
    assertThat(status.out()).contains("monthly: next on 2026-04-01 03:00 (UTC); last ended");
  }

  /** Whoever is not woken for it says nothing, and is listened to all the same. */
  private static void firstToSay(String words, KillableJava... schedulers) throws Exception {
    CountDownLatch said = new CountDownLatch(1);
    for (KillableJava scheduler : schedulers) {
      Thread listening = new Thread(() -> listen(words, scheduler, said));
      listening.setDaemon(true);
      listening.start();
    }
    said.await();
  }

  private static void listen(String words, KillableJava scheduler, CountDownLatch said) {
    try {
      if (scheduler.says(words)) {
        said.countDown();
      }
    } catch (IOException ended) {
      // It was killed: it says no more.
    }
  }

  private static long begun(KillableJava scheduler) {
    return scheduler.lines().stream().filter(line -> line.contains("monthly: begun")).count();
  }

  /** Frozen with the right to the job, before its first action, and before the first mail. */
  @ParameterizedTest
  @EnumSource(names = {"JOB_BEGUN", "SEND_OFFERED"})
  void one_that_is_frozen_past_its_lease_loses_the_job_and_sends_nothing_when_it_wakes(Point point)
      throws Exception {
    KillableJava frozen = schedule("2026-03-01T02:59:50Z", point.name());
    assertThat(frozen.comesTo(point)).isTrue();
    frozen.freeze();

    KillableJava other = schedule("2026-03-01T03:00:10Z", KillableJava.NOWHERE);
    assertThat(other.says("monthly: ended with 0 (DONE), next on 2026-04-01")).isTrue();
    List<String> told = recipients();

    frozen.thaw();
    assertThat(frozen.says("another scheduler has taken the job over")).isTrue();
    assertThat(recipients()).isEqualTo(told).hasSize(2).doesNotHaveDuplicates();
  }

  private List<String> recipients() {
    return Stream.of(mails.taken()).flatMap(List::stream).map(FaultyServer.Taken::to).toList();
  }
}
