package withers.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.chip.ChipNumber;
import withers.demo.DemoWorld;
import withers.demo.Fixtures;
import withers.scorecard.Scorecard;

/**
 * Scorecards against the oracle's, patient by patient: all clinics as one group, one alone, and
 * two. Patients whom no animal took are the tool's alone: the oracle puts rows without a number
 * aside.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Tag("long")
class ScorecardOracleTest {
  private static final List<List<String>> GROUPS =
      List.of(
          List.of(
              "corvelsea-clinic", "nethersay-clinic", "pellerwick-clinic", "vendlemouth-clinic"),
          List.of("vendlemouth-clinic"),
          List.of("corvelsea-clinic", "pellerwick-clinic"));

  /** The oracle takes them for no number; in a column of chip numbers they are one. */
  private static final Pattern TEN_DIGITS = Pattern.compile("\\d{10}");

  @TempDir private Path folder;

  @Test
  void agrees_on_every_patient_of_the_demo() throws Exception {
    Path demo = Fixtures.folder().resolve("demo");
    agrees(demo, List.of(Month.SEPTEMBER, Month.OCTOBER));

    try (Oracle oracle = Oracle.judging(demo, Month.OCTOBER)) {
      assertThat(new TreeSet<>(oracle.scored(GROUPS.get(1)).values()))
          .as("all but one that only turmoil brings, and details that were forgotten")
          .contains(
              "home-not-known",
              "in-care",
              "keeper-not-known",
              "no-details",
              "not-confirmed",
              "not-registered",
              "other-details",
              "reachable",
              "referral",
              "registry-not-known");
    }
  }

  @Test
  void agrees_on_every_patient_of_a_world_in_turmoil() throws Exception {
    Path world = folder.resolve("world");
    DemoWorld.generate(7, 300, world);
    Turmoil turmoil = new Turmoil(7);
    turmoil.stir(world, Month.NOVEMBER);
    turmoil.stir(world, Month.DECEMBER);
    agrees(world, Month.ALL);
  }

  private void agrees(Path world, List<Month> months) throws Exception {
    Pipeline pipeline = new Pipeline(world, folder.resolve("workspace"), "");
    for (Month month : months) {
      pipeline.receive(world.resolve(month.folder()), month.asOf());
    }
    Month last = months.get(months.size() - 1);
    agrees(pipeline, world, last, last.asOf());
    agrees(pipeline, world, last, last.asOf().minusDays(17));
  }

  private static void agrees(Pipeline pipeline, Path world, Month received, LocalDate asOf)
      throws Exception {
    try (Oracle oracle = Oracle.judging(received.foldersUpToHere(world), asOf, received.asOf())) {
      for (List<String> clinics : GROUPS) {
        SortedMap<String, String> reach = reach(pipeline.score(clinics, asOf, received.asOf()));
        assertThat(reach).isNotEmpty();
        assertThat(differences(reach, oracle.scored(clinics)))
            .as("%s as of %s", clinics, asOf)
            .isEmpty();
      }
    }
  }

  private static List<String> differences(Map<String, String> tool, Map<String, String> oracle) {
    return Stream.concat(tool.keySet().stream(), oracle.keySet().stream())
        .distinct()
        .filter(anchor -> !TEN_DIGITS.matcher(anchor).matches())
        .filter(anchor -> !Objects.equals(tool.get(anchor), oracle.get(anchor)))
        .map(anchor -> "%s: %s, %s".formatted(anchor, tool.get(anchor), oracle.get(anchor)))
        .toList();
  }

  private static SortedMap<String, String> reach(Scorecard card) {
    SortedMap<String, String> reach = new TreeMap<>();
    card.patients()
        .forEach(
            patient ->
                patient
                    .anchor()
                    .map(ChipNumber::display)
                    .ifPresent(anchor -> reach.put(anchor, word(patient.reach()))));
    return reach;
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
