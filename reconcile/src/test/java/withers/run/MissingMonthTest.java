package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.finding.Damage;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.history.Scope;
import withers.world.Export;
import withers.world.RandomWorld;
import withers.world.World;

/** What can't be judged this month neither opens nor closes. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class MissingMonthTest {

  private static final int SEEDS = 400;
  private static final LocalDate LAST_MONTH = RandomWorld.ROUNDS.get(2).plusDays(1);
  private static final LocalDate THIS_MONTH = RandomWorld.ROUNDS.get(3).plusDays(1);

  /** Kinds that rest on no registry: they show when a more pressing one can't be judged. */
  private static final Set<FindingKind> OF_NO_REGISTRY =
      EnumSet.of(
          FindingKind.FOUND_WAITING,
          FindingKind.NUMBER_ON_TWO_ANIMALS,
          FindingKind.CUSTODY_UNCLEAR,
          FindingKind.NOT_DETECTED,
          FindingKind.SCAN_OVERDUE);

  /**
   * A found animal is left out: whom to ask is told by any record, however old, and asking once too
   * often does no harm. So are the other kinds that rest on no registry, and a number that ends in
   * zeros, which the missing export would have spoken of too, and a box of which it would have told
   * the last number: looking at one record once too often does none either.
   */
  @Test
  void leaving_one_registry_s_newest_export_out_opens_nothing_new() {
    int opened = 0;
    for (long seed = 0; seed < SEEDS; seed++) {
      World world = World.of(RandomWorld.lines(seed, 8, 0));
      String registry = seed % 2 == 0 ? "north" : "south";
      Set<CaseKey> known = keys(judge(world, e -> !e.date().isAfter(LAST_MONTH), LAST_MONTH));
      List<Finding> whole = judge(world, e -> true, THIS_MONTH);
      known.addAll(keys(whole));
      Set<Anchor> lost = lost(whole);

      Set<CaseKey> without = keys(judge(world, e -> !isNewestOf(registry, e), THIS_MONTH));

      opened += without.size();
      without.removeAll(known);
      without.removeIf(key -> lost.contains(key.anchor()));
      assertThat(without).as("seed " + seed).isEmpty();
    }
    assertThat(opened).isGreaterThan(SEEDS / 10);
  }

  private static boolean isNewestOf(String registry, Export export) {
    return export.source().value().equals(registry)
        && export.date().equals(RandomWorld.ROUNDS.get(3));
  }

  private static List<Finding> judge(World world, Predicate<Export> which, LocalDate asOf) {
    List<Export> exports = world.exports().stream().filter(which).toList();
    return world
        .reconciliation(1)
        .judge(World.log(exports, 10).snapshot(), Scope.asOf(asOf))
        .findings();
  }

  /** What is wrong with them shows when it can't be judged whether anybody can be reached. */
  private static Set<Anchor> lost(List<Finding> findings) {
    return findings.stream()
        .filter(finding -> finding.kind() == FindingKind.LOST_UNREACHABLE)
        .map(Finding::anchor)
        .collect(Collectors.toSet());
  }

  private static boolean endsInZeros(Damage damage) {
    return damage.written().endsWith("000000");
  }

  /** That a registration was paid for changes what is said about the same missing one. */
  private static CaseKey asked(CaseKey key) {
    return key.rule().equals("prepaid-unused")
        ? new CaseKey("unregistered", key.anchor(), key.actor(), key.recordKey())
        : key;
  }

  private static Set<CaseKey> keys(List<Finding> findings) {
    return findings.stream()
        .filter(finding -> !OF_NO_REGISTRY.contains(finding.kind()))
        .filter(finding -> finding.stock().isEmpty())
        .filter(finding -> finding.damage().filter(MissingMonthTest::endsInZeros).isEmpty())
        .map(finding -> asked(finding.caseKey()))
        .collect(Collectors.toCollection(HashSet::new));
  }
}
