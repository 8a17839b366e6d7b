package withers.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import withers.finding.Compared;
import withers.finding.Evidence;
import withers.finding.Finding;
import withers.finding.Finding.Registration;
import withers.finding.Who;
import withers.world.World;

/** What a finding rests on, as a table that a registrar could check: {@code evidence.txt}. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class EvidenceTableTest {

  private static final String ARROW = "-> ";
  private static final List<String> PEOPLE = List.of("Ada", "AdaMoved", "Bo", "Cy");
  private static final String AS_OF = "2026-10-01";

  @TestFactory
  Stream<DynamicTest> every_finding_shows_what_it_rests_on() throws IOException {
    return Arrays.stream(table().split("\n(?=# )"))
        .filter(story -> story.startsWith("# "))
        .map(EvidenceTableTest::test);
  }

  private static DynamicTest test(String story) {
    List<String> lines = story.lines().skip(1).filter(line -> !line.isBlank()).toList();
    List<String> told = lines.stream().filter(line -> !line.startsWith(ARROW)).toList();
    List<String> expected =
        lines.stream()
            .filter(line -> line.startsWith(ARROW))
            .map(line -> line.substring(ARROW.length()))
            .toList();
    String title = story.lines().findFirst().orElseThrow();
    return DynamicTest.dynamicTest(
        title, () -> assertThat(said(World.of(String.join("\n", told)))).isEqualTo(expected));
  }

  private static List<String> said(World world) {
    List<String> said = new ArrayList<>();
    for (Finding finding : world.judge(AS_OF).findings()) {
      said.add(
          "%s %s %s %s%s"
              .formatted(
                  finding.kind().word(),
                  finding.species(),
                  finding.animalName().orElse("-"),
                  finding.certainty(),
                  isWhileHeld(finding) ? " while held" : ""));
      finding
          .registered()
          .forEach(one -> one.compared().ifPresent(how -> said.add(said(one, how))));
      finding.evidence().forEach(evidence -> said.add(said(evidence, world)));
    }
    return said;
  }

  private static boolean isWhileHeld(Finding finding) {
    return finding.priority().arithmetic().stream().anyMatch(f -> f.name().equals("stray-hold"));
  }

  private static String said(Registration registration, Compared compared) {
    return "compared C%d %s %s"
        .formatted(registration.chip().nationalCode(), registration.registry(), compared.verdict());
  }

  private static String said(Evidence evidence, World world) {
    return "%s %s C%d %s %s"
        .formatted(
            evidence.part(),
            evidence.day(),
            evidence.chip().nationalCode(),
            evidence.saidBy(),
            word(evidence.who(), world));
  }

  private static String word(Who who, World world) {
    if (who instanceof Who.Organisation organisation) {
      return organisation.id().value();
    }
    return who.person()
        .flatMap(
            person ->
                PEOPLE.stream()
                    .filter(word -> world.reference(word).equals(person.reference()))
                    .findFirst())
        .orElse("-");
  }

  private static String table() throws IOException {
    try (InputStream in =
        Objects.requireNonNull(EvidenceTableTest.class.getResourceAsStream("evidence.txt"))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
