package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.jgrapht.Graph;
import org.jgrapht.alg.connectivity.ConnectivityInspector;
import org.jgrapht.graph.DefaultEdge;
import org.jgrapht.graph.SimpleGraph;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.chip.ChipNumber;

/**
 * Which chips are one animal's, checked against JGraphT's connected components. Built on {@link
 * Random}, whose algorithm its documentation lays down.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ComponentsTest {

  private static final int SEEDS = 300;

  @Test
  void chips_are_one_animal_s_exactly_when_pairings_connect_them() {
    for (long seed = 0; seed < SEEDS; seed++) {
      Random random = new Random(seed);
      int chips = 1 + random.nextInt(40);
      Components ours = new Components();
      Graph<ChipNumber, DefaultEdge> theirs = new SimpleGraph<>(DefaultEdge.class);
      for (int i = 0; i < chips; i++) {
        ours.add(chip(i));
        theirs.addVertex(chip(i));
      }
      for (int pairings = random.nextInt(chips + 1); pairings > 0; pairings--) {
        pair(chip(random.nextInt(chips)), chip(random.nextInt(chips)), ours, theirs);
      }

      assertThat(sets(ours)).as("seed " + seed).containsExactlyInAnyOrderElementsOf(sets(theirs));
    }
  }

  @Test
  void animals_come_in_the_order_of_their_lowest_number_whatever_the_order_of_the_pairings() {
    Components components = new Components();
    components.join(chip(9), chip(4));
    components.join(chip(7), chip(2));
    components.join(chip(9), chip(3));
    components.add(chip(5));

    assertThat(components.animals())
        .extracting(animal -> animal.stream().sorted().toList())
        .containsExactly(
            List.of(chip(2), chip(7)), List.of(chip(3), chip(4), chip(9)), List.of(chip(5)));
  }

  private static void pair(
      ChipNumber one, ChipNumber other, Components ours, Graph<ChipNumber, DefaultEdge> theirs) {
    ours.join(one, other);
    if (!one.equals(other)) {
      theirs.addEdge(one, other);
    }
  }

  private static List<Set<ChipNumber>> sets(Components components) {
    List<Set<ChipNumber>> sets = new ArrayList<>();
    components.animals().forEach(animal -> sets.add(Set.copyOf(animal)));
    return sets;
  }

  private static List<Set<ChipNumber>> sets(Graph<ChipNumber, DefaultEdge> graph) {
    return new ConnectivityInspector<>(graph).connectedSets();
  }

  private static ChipNumber chip(int number) {
    return ChipNumber.parse("99901000000%04d".formatted(number));
  }
}
