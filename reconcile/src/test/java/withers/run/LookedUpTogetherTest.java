package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.codec.Streams;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contacts.Answers;
import withers.contacts.FormFinder;
import withers.contacts.People;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.history.Scope;
import withers.log.Partitions;
import withers.matching.Matcher;
import withers.matching.form.NormalForms;
import withers.world.Chips;
import withers.world.World;

/** People who were told of before, and whose pairs nothing was found about yet. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LookedUpTogetherTest {
  private static final int PARTITION = 7;

  /** Keepers, and what the registry has instead: the same people with other details. */
  private static final Map<String, String> DIFFERING = Map.of("Ada", "AdaMoved", "Bo", "BoMoved");

  private final List<Collection<ContactRef>> asked = new ArrayList<>();
  private final Answers answers = new Answers();

  /** Chips that the northern registry may hold, all of one partition. */
  private static List<String> chips() {
    return IntStream.iterate(100, number -> number + 1)
        .mapToObj(Chips::chip)
        .filter(chip -> Partitions.of(chip, Streams.CHIPS.partitions()) == PARTITION)
        .limit(DIFFERING.size())
        .map(Chips::word)
        .toList();
  }

  private static World world(String registrysExport) {
    StringBuilder lines = new StringBuilder();
    List<String> keepers = List.copyOf(DIFFERING.keySet());
    List<String> chips = chips();
    for (int i = 0; i < chips.size(); i++) {
      String keeper = keepers.get(i);
      lines.append(
          """
          shelter 2026-08-15 %1$s s%1$s went 2026-03-01 adoption own %2$s
          north %3$s %1$s n%1$s registered 2026-03-02 %4$s
          """
              .formatted(chips.get(i), keeper, registrysExport, DIFFERING.get(keeper)));
    }
    return World.of(lines.toString());
  }

  /** A run with nothing at hand but what runs before it were told. */
  private List<Finding> run(World world, String asOf) {
    asked.clear();
    NormalForms forms = new NormalForms("US");
    FormFinder finder = FormFinder.anew(references -> find(world.vault(), references), forms);
    People people = new People(World.DIRECTORY, finder, forms, Matcher.builtIn(), answers);
    return new Reconciliation(World.DIRECTORY, people, World.PERIODS, new Workers(1), () -> {})
        .judge(world.log().snapshot(), Scope.asOf(LocalDate.parse(asOf)))
        .findings();
  }

  private Map<ContactRef, Contact> find(ContactVault vault, Collection<ContactRef> references) {
    asked.add(List.copyOf(references));
    return vault.findAll(references);
  }

  @Test
  void whoever_explains_new_findings_is_looked_up_together() {
    assertThat(run(world("2026-08-15"), "2026-08-16")).isEmpty();
    assertThat(asked).hasSize(1);

    List<Finding> findings = run(world("2026-09-30"), "2026-10-01");

    assertThat(findings)
        .hasSize(DIFFERING.size())
        .allMatch(finding -> finding.kind() == FindingKind.DETAILS_DIFFER)
        .allMatch(finding -> finding.registered().get(0).compared().isPresent());
    assertThat(asked).hasSize(1);
    assertThat(asked.get(0)).hasSize(2 * DIFFERING.size());

    assertThat(run(world("2026-09-30"), "2026-10-01")).isEqualTo(findings);
    assertThat(asked).isEmpty();
  }
}
