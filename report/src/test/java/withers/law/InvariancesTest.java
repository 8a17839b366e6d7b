package withers.law;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withers.cases.CaseKey;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.id.OrganisationId;

/** What must not matter: who else takes part, what columns are called, and what year it is. */
@DisplayNameGeneration(ReplaceUnderscores.class)
@Tag("long")
class InvariancesTest {

  private static final int ANIMALS = 300;
  private static final LocalDate AS_OF = LocalDate.of(2026, 10, 1);
  private static final LocalDate A_MONTH_BEFORE = LocalDate.of(2026, 9, 1);
  private static final Set<FindingKind> RESTING_ON_SILENCE =
      EnumSet.of(
          FindingKind.UNREGISTERED,
          FindingKind.PREPAID_UNUSED,
          FindingKind.REGISTERED_ELSEWHERE,
          FindingKind.TRAIL_ENDS_AT_PURCHASER,
          FindingKind.STOCK_UNACCOUNTED);

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void an_unrelated_organisation_changes_nothing_for_the_others(long seed) throws IOException {
    OrganisationId unrelated = new OrganisationId("farholm-clinic");

    List<Finding> beside = judged(world(seed, "beside").besideAnUnrelatedClinic(), AS_OF);

    assertThat(beside).as("seed " + seed).anyMatch(finding -> finding.actor().equals(unrelated));
    assertThat(beside.stream().filter(f -> !f.actor().equals(unrelated)).map(Told::of).toList())
        .as("seed " + seed)
        .isEqualTo(told(judged(world(seed, "alone"), AS_OF)));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void other_names_of_columns_change_nothing(long seed) throws IOException {
    assertThat(told(judged(world(seed, "renamed").underOtherHeaders(), AS_OF)))
        .as("seed " + seed)
        .isEqualTo(told(judged(world(seed, "plain"), AS_OF)));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void everything_a_week_later_is_found_a_week_later(long seed) throws IOException {
    assertThat(told(judged(world(seed, "later").later(7), AS_OF.plusDays(7))))
        .as("seed " + seed)
        .isEqualTo(told(judged(world(seed, "plain"), AS_OF)));
  }

  /** What was found a month ago may still be found without the newest export. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2})
  void taking_any_registry_s_export_away_opens_nothing_that_rests_on_silence(long seed)
      throws IOException {
    Retold world = world(seed, "plain");
    Set<CaseKey> with = silent(judged(world, AS_OF));
    with.addAll(silent(judged(world, world.firstMonth(), A_MONTH_BEFORE)));
    List<Path> exports = world.exports();
    for (int left : registries(exports)) {
      List<Path> others = new ArrayList<>(exports);
      Path out = others.remove(left);

      Set<CaseKey> without = silent(judged(world, others, AS_OF));

      without.removeAll(with);
      assertThat(without).as("seed %d without %s", seed, out.getFileName()).isEmpty();
    }
    assertThat(with)
        .extracting(CaseKey::rule)
        .containsAll(RESTING_ON_SILENCE.stream().map(FindingKind::word).toList());
  }

  private static List<Integer> registries(List<Path> exports) {
    Predicate<Integer> isRegistry =
        at -> exports.get(at).getFileName().toString().matches(".*(register|account)-\\d.*");
    return IntStream.range(0, exports.size()).boxed().filter(isRegistry).toList();
  }

  /** A finding without its days and places. */
  private record Told(CaseKey key, String urgency, int evidence) {
    static Told of(Finding finding) {
      return new Told(finding.caseKey(), finding.priority().toString(), finding.evidence().size());
    }
  }

  private static List<Told> told(List<Finding> findings) {
    return findings.stream().map(Told::of).toList();
  }

  private static Set<CaseKey> silent(List<Finding> findings) {
    return findings.stream()
        .filter(finding -> RESTING_ON_SILENCE.contains(finding.kind()))
        .map(Finding::caseKey)
        .collect(Collectors.toCollection(HashSet::new));
  }

  private Retold world(long seed, String name) throws IOException {
    return new Retold(folder.resolve(name), seed, ANIMALS);
  }

  private static List<Finding> judged(Retold world, LocalDate asOf) {
    return judged(world, world.exports(), asOf);
  }

  private static List<Finding> judged(Retold world, List<Path> exports, LocalDate asOf) {
    Desk desk = new Desk(world.workspace());
    exports.forEach(export -> desk.take(List.of(export)));
    return desk.outcome(asOf, 1).findings();
  }
}
