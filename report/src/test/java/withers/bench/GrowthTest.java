package withers.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class GrowthTest {

  @Test
  void what_takes_as_long_for_each_row_grows_with_the_first_power() {
    assertThat(growth(1).exponent(Stage.FIRST_IMPORT)).isCloseTo(1, within(1e-9));
  }

  @Test
  void what_takes_longer_for_each_row_grows_with_a_higher_one_and_misses_the_aim() {
    Growth growth = growth(1.5);
    assertThat(growth.exponent(Stage.FIRST_IMPORT)).isCloseTo(1.5, within(1e-9));
    assertThat(growth.lines())
        .containsExactly(
            "first import                       time grows with the size's power  1.50  (at most 1.15: not held)");
  }

  @Test
  void one_size_tells_nothing_of_growth() {
    BenchRun run = BenchFigures.lasting(10, 1, Stage.FIRST_IMPORT);
    assertThat(new Growth(List.of(run, run)).lines()).isEmpty();
  }

  @Test
  void one_heap_tells_nothing_of_heaps() {
    assertThat(new Heaps(growth(1).runs()).lines()).isEmpty();
  }

  /** The least of two rounds is of each stage, and memory's is the most. */
  @Test
  void of_rounds_the_least_of_each_stage_counts() {
    BenchRun slow = BenchFigures.lasting(10, 3, Stage.PARSE, Stage.FIRST_IMPORT);
    BenchRun quick = BenchFigures.lasting(10, 2, Stage.PARSE, Stage.FIRST_IMPORT);
    assertThat(BenchRun.least(List.of(slow, quick)).of(Stage.FIRST_IMPORT).seconds()).isEqualTo(2);
    assertThat(BenchRun.least(List.of(quick, slow)).of(Stage.PARSE).seconds()).isEqualTo(2);
  }

  /**
   * Fields 16 and 17 of proc(5), in hundredths of a second; a name may hold blanks and brackets.
   */
  @Test
  void reads_the_processor_time_of_ended_children() {
    String stat = "4242 (a ) b) S 1 2 3 4 5 6 7 8 9 10 700 80 150 50 20 0";
    assertThat(Children.nanos(stat)).isEqualTo(2_000_000_000L);
  }

  @Test
  void a_later_export_differs_in_the_day_of_its_name_alone() {
    assertThat(Imports.later(Path.of("lost-and-found-2026-05-01-2026-09-01.csv")))
        .isEqualTo("lost-and-found-2026-05-01-2026-09-05.csv");
  }

  private static Growth growth(double power) {
    return new Growth(
        LongStream.of(5, 10, 20, 50)
            .mapToObj(
                size ->
                    BenchFigures.lasting(
                        size, 3 * Math.pow((double) size, power), Stage.FIRST_IMPORT))
            .toList());
  }
}
