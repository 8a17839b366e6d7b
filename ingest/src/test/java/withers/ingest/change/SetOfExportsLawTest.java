package withers.ingest.change;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;
import java.util.stream.LongStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import withers.ingest.change.ModelExport.Said;

/** What is in effect depends on the set of exports, never on the order or number of imports. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SetOfExportsLawTest {

  private static final int SEEDS = 500;
  private static final int ORDERS = 4;

  static LongStream seeds() {
    return LongStream.range(0, SEEDS);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void every_order_of_imports_says_what_the_exports_say(long seed) {
    RandomExports random = new RandomExports(seed);
    List<ModelExport> exports = random.exports();
    Disappearance disappearance = Disappearance.values()[(int) (seed % 2)];
    SortedMap<String, SortedMap<LocalDate, Set<Said>>> specified =
        InEffect.specified(exports, disappearance);
    NavigableSet<LocalDate> withheld = withheld(exports, disappearance);
    for (int i = 0; i < ORDERS; i++) {
      List<Integer> order = i == 0 ? inOrder(exports) : random.permutation(exports.size());
      TestSource source = imported(exports, order, random, disappearance);
      assertThat(InEffect.on(source.snapshot(), TestSource.ID))
          .as("seed %d, order %s of %s", seed, order, exports)
          .isEqualTo(specified);
      assertThat(source.withheld()).as("seed %d, order %s", seed, order).isEqualTo(withheld);
    }
  }

  private static List<Integer> inOrder(List<ModelExport> exports) {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < exports.size(); i++) {
      order.add(i);
    }
    order.sort(java.util.Comparator.comparing(i -> exports.get(i).date()));
    return order;
  }

  private static TestSource imported(
      List<ModelExport> exports,
      List<Integer> order,
      RandomExports random,
      Disappearance disappearance) {
    TestSource source = new TestSource(disappearance);
    List<Integer> done = new ArrayList<>();
    for (int i : order) {
      take(source, exports.get(i), random);
      done.add(i);
      int again = done.get(random.random().nextInt(done.size()));
      assertThat(take(source, exports.get(again), random)).as("events of a repeat").isZero();
    }
    return source;
  }

  private static int take(TestSource source, ModelExport export, RandomExports random) {
    return source.take(export, random.permutation(export.rows().size()));
  }

  /** The rule's sentence, worked out from the exports alone. */
  private static NavigableSet<LocalDate> withheld(
      List<ModelExport> exports, Disappearance disappearance) {
    SortedMap<String, SortedMap<LocalDate, Set<Said>>> inEffect =
        InEffect.specified(exports, disappearance);
    NavigableSet<LocalDate> full = new TreeSet<>();
    exports.stream().filter(ModelExport::isFull).forEach(e -> full.add(e.date()));
    NavigableSet<LocalDate> withheld = new TreeSet<>();
    LocalDate before = null;
    for (LocalDate date : full) {
      if (before != null) {
        LocalDate last = before;
        long listed = inEffect.values().stream().filter(r -> isListed(r, last)).count();
        long missing =
            inEffect.values().stream().filter(r -> isListed(r, last) && !isListed(r, date)).count();
        if (missing > 10 && missing > listed * 0.10) {
          withheld.add(date);
        }
      }
      before = date;
    }
    return withheld;
  }

  private static boolean isListed(SortedMap<LocalDate, Set<Said>> record, LocalDate date) {
    SortedMap<LocalDate, Set<Said>> upTo = record.headMap(date.plusDays(1));
    return !upTo.isEmpty()
        && upTo.get(upTo.lastKey()).stream()
            .anyMatch(
                one ->
                    !(one.fact() instanceof withers.fact.Fact.NoLongerListed)
                        && !(one.fact() instanceof withers.fact.Fact.Withdrawn));
  }
}
