package withers.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.schedule.Action;
import withers.schedule.Cron;
import withers.schedule.DueTimes;
import withers.schedule.ScheduledJob;
import withers.yaml.ConfigException;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ScheduleReaderTest {
  @TempDir private Path folder;

  @Test
  void jobs_are_read_in_their_order_in_the_workspace_s_zone_or_their_own() throws IOException {
    assertThat(
            read(
                """
                mail: {server: {host: smtp.example.org}}
                schedule:
                  nightly: {cron: 30 2 * * *, actions: ingest}
                  monthly:
                    cron: 0 4 1 * *
                    zone: America/New_York
                    actions: [send, ingest, report, reconcile]
                """))
        .containsExactly(
            new ScheduledJob(
                "nightly", times("30 2 * * *", "Europe/Lisbon"), Set.of(Action.INGEST)),
            new ScheduledJob(
                "monthly",
                times("0 4 1 * *", "America/New_York"),
                Set.of(Action.INGEST, Action.RECONCILE, Action.REPORT, Action.SEND)));
    assertThat(read("schedule:\n")).isEmpty();
    assertThat(read("grace-days: 30\n")).isEmpty();
  }

  @Test
  void actions_come_in_the_order_in_which_they_are_done() throws IOException {
    ScheduledJob job =
        read("schedule: {weekly: {cron: 0 0 * * 1, actions: [report, ingest]}}").get(0);

    assertThat(job.actions()).containsExactly(Action.INGEST, Action.REPORT);
  }

  @Test
  void all_mistakes_are_told_each_with_its_place() {
    assertThatThrownBy(
            () ->
                read(
                    """
                    schedule:
                      nightly: {cron: 30 25 * * *, actions: [ingest]}
                      weekly: {cron: 0 0 * * 1, actions: [ingest, recnocile], zone: Europe/Lisboa}
                      monthly: {cron: 0 0 1 * *}
                      mails: {cron: 0 0 1 * *, actions: [send]}
                      The Last: {cron: 0 0 1 * *, actions: [ingest]}
                    """))
        .isInstanceOf(ConfigException.class)
        .hasMessage(
            """
            The configuration has 7 mistakes:
              Expected an hour from 0 to 23, a range such as 1-5, or a star, but found "25" (withers.yaml, line 5, column 19)
              Expected one of ingest, reconcile, report, send, tidy, but found "recnocile" (withers.yaml, line 6, column 47): did you mean "reconcile"?
              Expected a time zone such as Europe/Lisbon or America/New_York, but found "Europe/Lisboa" (withers.yaml, line 6, column 65)
              Expected the key "actions", but found none (withers.yaml, line 7, column 12): add it
              Expected report beside send, but found none (withers.yaml, line 8, column 37): mails are made by a report: add it
              Expected a mail server to send through, but found none (withers.yaml, line 8, column 37): state it as "mail: {server: {host: ...}}", or leave send out
              Expected a job's name of 1 to 40 lower-case letters, digits and dashes, but found another (withers.yaml, line 9, column 13)""");
  }

  @Test
  void who_watches_is_read_and_nobody_is_told_by_mail_without_a_server() throws IOException {
    read("watch: {port: 9464}\n");
    assertThat(settings().watch())
        .isEqualTo(new WatchSettings("127.0.0.1", Optional.of(9464), Optional.empty()));
    read(
        """
        mail: {server: {host: smtp.example.org}}
        watch: {port: 9464, address: '::1', operator: night@example.org}
        """);
    assertThat(settings().watch())
        .isEqualTo(new WatchSettings("::1", Optional.of(9464), Optional.of("night@example.org")));
    assertThatThrownBy(() -> read("watch: {port: 0, address: a b, operator: night@example.org}\n"))
        .hasMessage(
            """
            The configuration has 3 mistakes:
              Expected a whole number from 1 to 65535, but found "0" (withers.yaml, line 4, column 15)
              Expected an address of this machine such as 127.0.0.1, but found other characters (withers.yaml, line 4, column 27)
              Expected a mail server to send through, but found none (withers.yaml, line 4, column 42): state it as "mail: {server: {host: ...}}", or leave operator out""");
  }

  private Settings settings() {
    return Workspace.open(folder, Clock.systemUTC()).settings();
  }

  private static DueTimes times(String cron, String zone) {
    return new DueTimes(Cron.read(cron), ZoneId.of(zone));
  }

  private List<ScheduledJob> read(String schedule) throws IOException {
    Files.writeString(
        folder.resolve("withers.yaml"),
        "network: Coast Network\nzone: Europe/Lisbon\ncoordinator: coast\n" + schedule);
    Files.writeString(
        folder.resolve("organisations.yaml"),
        "organisations:\n  - {id: coast, name: Coast Network, kind: coordinator}\n");
    return Workspace.open(folder, Clock.systemUTC()).settings().schedule();
  }
}
