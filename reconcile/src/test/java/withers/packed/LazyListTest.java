package withers.packed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LazyListTest {

  private static LazyList<String> words(int from, int to) {
    return LazyList.of(to - from, index -> "word " + (from + index));
  }

  @Test
  void lists_of_any_length_follow_one_another() {
    for (long seed = 0; seed < 200; seed++) {
      Random random = new Random(seed);
      List<LazyList<String>> parts = new ArrayList<>();
      int end = 0;
      for (int part = random.nextInt(6); part > 0; part--) {
        int from = end;
        end += Math.max(0, random.nextInt(5) - 1);
        parts.add(words(from, end));
      }

      assertThat(LazyList.together(parts)).as("seed " + seed).isEqualTo(words(0, end));
    }
  }

  @Test
  void elements_are_chosen_once_and_made_when_asked_for() {
    List<Integer> made = new ArrayList<>();
    LazyList<Integer> numbers =
        LazyList.of(
            6,
            index -> {
              made.add(index);
              return index * index;
            });

    LazyList<Integer> even = numbers.where(number -> number % 2 == 0);

    assertThat(made).containsExactly(0, 1, 2, 3, 4, 5);
    assertThat(even).containsExactly(0, 4, 16);
    assertThat(even.get(1)).isEqualTo(4);
    assertThat(made.subList(6, made.size())).containsOnly(0, 2, 4);
  }

  @Test
  void some_places_are_taken_in_their_order() {
    assertThat(LazyList.at(IntStream.of(3, 1, 1), words(0, 5)))
        .containsExactly("word 3", "word 1", "word 1");
  }

  @Test
  void a_copy_of_a_lazy_list_is_the_same_and_of_another_one_its_own() {
    LazyList<String> lazy = words(0, 3);
    List<String> other = new ArrayList<>(lazy);

    assertThat(LazyList.copyOf(lazy)).isSameAs(lazy);
    List<String> copy = LazyList.copyOf(other);
    other.clear();
    assertThat(copy).isEqualTo(lazy);
  }

  @Test
  void there_is_nothing_outside_of_it_and_nothing_changes() {
    LazyList<String> lazy = words(0, 3);

    assertThatThrownBy(() -> lazy.get(3)).isInstanceOf(IndexOutOfBoundsException.class);
    assertThatThrownBy(() -> lazy.get(-1)).isInstanceOf(IndexOutOfBoundsException.class);
    assertThatThrownBy(() -> lazy.add("more")).isInstanceOf(UnsupportedOperationException.class);
  }
}
