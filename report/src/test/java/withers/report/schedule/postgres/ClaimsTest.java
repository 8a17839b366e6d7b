package withers.report.schedule.postgres;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;
import withers.report.schedule.postgres.Claims.Taken;

/** Rights to jobs in PostgreSQL itself. */
@Tag("postgres")
@EnabledIf(
    value = "withers.report.schedule.postgres.PostgresServer#isHere",
    disabledReason = "no PostgreSQL here: apt-get install postgresql")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ClaimsTest {
  private static final Duration LEASE = Duration.ofSeconds(2);

  private static PostgresServer server;
  private static JobDatabase database;

  @BeforeAll
  static void start() throws IOException {
    server = PostgresServer.start();
    database = server.database(LEASE);
  }

  @AfterAll
  static void stop() throws IOException {
    server.close();
  }

  private static Claims claims(String owner) {
    return new Claims(database, owner);
  }

  @Test
  void many_that_start_together_make_the_tables_once() throws Exception {
    assertThat(together(8, i -> server.database(LEASE).lease())).hasSize(8).containsOnly(LEASE);
  }

  @Test
  void of_many_that_reach_for_a_right_one_has_it() throws Exception {
    List<Optional<Taken>> taken = together(8, i -> claims("s" + i).take("crowded", "{}"));

    assertThat(taken.stream().flatMap(Optional::stream)).containsExactly(new Taken(1, "{}"));
    claims("s0").leave("crowded", 1);
  }

  @Test
  void while_one_job_is_being_done_no_other_is() {
    Taken first = claims("a").take("one", "{}").orElseThrow();

    assertThat(claims("b").take("other", "{}")).isEmpty();
    claims("a").leave("one", first.fence());
    Taken second = claims("b").take("other", "{}").orElseThrow();
    claims("b").leave("other", second.fence());
  }

  @Test
  void what_was_written_is_there_for_the_next() {
    Taken first = claims("a").take("handed-on", "{}").orElseThrow();
    assertThat(claims("a").write("handed-on", first.fence(), "done")).isTrue();
    claims("a").leave("handed-on", first.fence());

    Taken next = claims("b").take("handed-on", "{}").orElseThrow();
    assertThat(next).isEqualTo(new Taken(2, "done"));
    assertThat(claims("c").state("handed-on")).contains("done");
    assertThat(claims("c").state("never-seen")).isEmpty();
    claims("b").leave("handed-on", next.fence());
  }

  @Test
  void who_is_not_heard_of_for_a_lease_loses_the_right_and_can_no_more_write() throws Exception {
    Taken frozen = claims("a").take("frozen", "{}").orElseThrow();
    assertThat(claims("b").take("frozen", "{}")).isEmpty();
    assertThat(claims("a").prolong("frozen", frozen.fence())).isTrue();
    TimeUnit.MILLISECONDS.sleep(LEASE.toMillis() + 300); // the database's own clock has to pass

    Taken other = claims("b").take("frozen", "{}").orElseThrow();
    assertThat(claims("a").prolong("frozen", frozen.fence())).isFalse();
    assertThat(claims("a").write("frozen", frozen.fence(), "late")).isFalse();
    claims("a").leave("frozen", frozen.fence());
    assertThat(claims("b").prolong("frozen", other.fence())).isTrue();
    assertThat(claims("c").state("frozen")).contains("{}");
    claims("b").leave("frozen", other.fence());
  }

  @Test
  void a_server_that_is_not_there_is_named() throws IOException {
    JobDatabase gone;
    try (PostgresServer closing = PostgresServer.start()) {
      gone = closing.database(LEASE);
    }
    assertThatThrownBy(() -> new Claims(gone, "a").state("any"))
        .isInstanceOf(StoreUnavailableException.class)
        .hasMessageMatching(
            "The schedule's database postgres at 127.0.0.1, port \\d+, can't be used \\(SQLSTATE"
                + " 08001\\): see that it is up and takes this user");
  }

  private interface Attempt<T> {
    T by(int number);
  }

  private static <T> List<T> together(int number, Attempt<T> attempt) throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(number);
    try {
      List<Future<T>> started =
          IntStream.range(0, number).mapToObj(i -> threads.submit(() -> attempt.by(i))).toList();
      List<T> results = new ArrayList<>();
      for (Future<T> one : started) {
        results.add(one.get(30, TimeUnit.SECONDS));
      }
      return results;
    } finally {
      threads.shutdownNow();
    }
  }
}
