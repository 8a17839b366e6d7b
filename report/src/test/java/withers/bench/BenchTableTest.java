package withers.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.bench.JvmTime.SystemThread;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class BenchTableTest {

  private final List<String> lines = new BenchTable(BenchFigures.run()).lines();

  @Test
  void begins_with_what_was_asked_and_the_machine() {
    assertThat(lines.get(0))
        .isEqualTo(
            "1,000 rows asked for, seed 7; the demo's mix; heap 1g; 2 processors, 24 GB, load 0.3 before; Java 17.0.15");
  }

  @Test
  void sets_each_stage_beside_the_plainer_one() {
    assertThat(lines)
        .contains(
            "read the bytes, count lines                   1,000 rows      0.50      0.25      0.13      0.06          2,000                               200",
            "parse with Commons CSV                        1,000 rows      1.00      0.25         ?         ?          1,000      0.500 of read-lines        ?",
            "first import                                  1,000 rows      2.50      0.25      0.13      0.06            400           0.400 of parse      200");
  }

  @Test
  void then_tells_what_things_take_on_disk() {
    assertThat(lines)
        .containsSequence(
            "exports             0.2 MB        1,000 rows        150.0 bytes each",
            "event log           0.1 MB        2,500 events       24.0 bytes each",
            "contact vault       0.1 MB          500 contacts    150.0 bytes each",
            "390 animals judged: 39 (10.0 %) with a finding, 11 with a question or not judged besides,"
                + " the others with nothing to say; 40 findings, those about records included");
  }

  /** 100,000 bytes took the bare work 6.5 s, and 135,000 of them were written. */
  @Test
  void sets_each_stage_beside_the_bare_work_that_it_leans_on() {
    assertThat(lines)
        .anyMatch(
            line ->
                line.matches("first import +2.50 s; its 0.1 MB: write-sqlite +8.775 s, 0.3 times"));
  }

  @Test
  void ends_with_what_was_aimed_at() {
    assertThat(lines.get(lines.size() - 1))
        .matches("trace from a cold process +at most +0.80 s +13.00 +not held");
  }

  @Test
  void a_run_survives_its_line_of_JSON() {
    BenchRun run = BenchFigures.run();
    assertThat(BenchJson.readRun(BenchJson.write(run))).isEqualTo(run);
    assertThat(BenchJson.write(run)).doesNotContain("\n");
  }

  /** The names are cut as Linux cuts them; the numbers are invented. */
  @Test
  void what_the_JVM_takes_for_itself_is_its_threads_of_that_name() {
    List<SystemThread> threads =
        List.of(
            SystemThread.of("C1 CompilerThre\n", "1500000000 7 3\n"),
            SystemThread.of("C2 CompilerThre\n", "2000000000 7 3\n"),
            SystemThread.of("GC Thread#0\n", "250000000 7 3\n"),
            SystemThread.of("java\n", "9000000000 7 3\n"));
    assertThat(JvmTime.of(threads)).isEqualTo(new JvmTime(3.5, 0.25));
  }

  /** A JVM has always compiled something before it comes here. */
  @Test
  void this_JVM_is_told_of_where_the_system_counts() {
    assumeThat(Path.of("/proc/self/schedstat")).exists();
    assertThat(JvmTime.now().orElseThrow().compilers()).isPositive();
  }

  /** The format of proc(5). */
  @Test
  void reads_the_peak_of_memory_where_the_system_tells_it() {
    List<String> status = List.of("Name:\tjava", "VmPeak:\t 9000 kB", "VmHWM:\t  2048 kB");
    assertThat(Memory.peak(status)).isEqualTo(OptionalLong.of(2048 * 1024));
    assertThat(Memory.peak(List.of("Name:\tjava"))).isEmpty();
  }
}
