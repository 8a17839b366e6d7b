package withers.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class NetworkWorldTest {

  private static final int ANIMALS = 4000;
  private static final Shares NOTHING = new Shares(0, 0, 0, 0, 0, 0.75);

  @TempDir private Path folder;

  @Test
  void the_same_seed_gives_the_same_files_and_another_seed_others() throws IOException {
    List<String> rows = rows(7, NOTHING, Round.first());
    assertThat(rows(7, NOTHING, Round.first())).isEqualTo(rows);
    assertThat(rows(8, NOTHING, Round.first())).isNotEqualTo(rows);
  }

  @Test
  void nothing_changes_unless_a_share_does() throws IOException {
    List<String> first = of(Source.COAST_REGISTER, NOTHING, Round.first());
    assertThat(of(Source.COAST_REGISTER, NOTHING, Round.last())).containsAll(mostOf(first));
  }

  /** Stories and movements, of which only news is sent, aside. */
  @Test
  void as_many_rows_are_others_in_the_next_month_as_are_asked_for() throws IOException {
    Shares shares = new Shares(0, 0, 0, 0.1, 0.1, 0.75);
    List<String> first = mostOf(of(Source.COAST_REGISTER, shares, Round.first()));
    Set<String> next = new HashSet<>(of(Source.COAST_REGISTER, shares, Round.last()));
    double others = first.stream().filter(row -> !next.contains(row)).count();
    assertThat(others / first.size()).isCloseTo(0.2, within(0.03));
  }

  @Test
  void as_many_rows_stand_twice_as_are_asked_for() throws IOException {
    List<String> rows = of(Source.COAST_REGISTER, new Shares(0, 0, 0.1, 0, 0, 0.75), Round.first());
    double once = new HashSet<>(rows).size();
    assertThat(rows.size() / once).isCloseTo(1.1, within(0.02));
  }

  @Test
  void what_comes_late_comes_in_the_next_month() throws IOException {
    Shares shares = new Shares(0, 0.2, 0, 0, 0, 0.75);
    double first = of(Source.TOLLBARROW_SALES, shares, Round.first()).size();
    double next = of(Source.TOLLBARROW_SALES, shares, Round.last()).size();
    assertThat(first / next).isCloseTo(0.8, within(0.06));
  }

  @Test
  void a_share_is_no_more_than_all() {
    assertThatThrownBy(() -> new Shares(1.5, 0, 0, 0, 0, 0))
        .hasMessage("Expected the share trouble from 0 to 1, but found 1.5");
  }

  @Test
  void no_two_animals_have_one_number_beyond_ten_million_either() {
    List<Integer> counts = List.of(0, 9_999_999, 10_000_000, 19_999_999, 20_000_000, 49_999_999);
    List<String> chips = new ArrayList<>();
    for (int count : counts) {
      Stream.of(10, 42, 70).forEach(p -> chips.add(Chips.number(Chips.COAST, p, count)));
    }
    assertThat(chips).allMatch(chip -> chip.matches("999010\\d{9}"));
    for (int i = 0; i < chips.size(); i += 3) {
      assertThat(chips.subList(0, i)).doesNotContainAnyElementsOf(chips.subList(i, i + 3));
      assertThat(chips.get(i)).isNotEqualTo(chips.get(i + 2));
    }
  }

  /** Without the stories at the end, which change as they are written. */
  private static List<String> mostOf(List<String> rows) {
    return rows.subList(0, rows.size() - 100);
  }

  private List<String> of(Source source, Shares shares, Round round) throws IOException {
    return rows(7, shares, round).stream().filter(line -> line.startsWith(source.id())).toList();
  }

  private List<String> rows(long seed, Shares shares, Round round) throws IOException {
    NetworkWorld.generate(seed, ANIMALS, shares, folder);
    List<String> rows = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder.resolve(round.folder()))) {
      for (Path file : files.sorted().toList()) {
        String name = file.getFileName().toString().replaceFirst("-20.*", "");
        Files.readAllLines(file).forEach(line -> rows.add(name + ": " + line));
      }
    }
    return rows;
  }
}
