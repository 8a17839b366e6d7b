package withers.custody;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import withers.finding.Who;
import withers.history.Animal;
import withers.history.Scope;
import withers.history.Sources;
import withers.log.LogSnapshot;
import withers.run.AnimalReader;
import withers.world.Chips;
import withers.world.World;

/** The table beside this class: who has the animal, story by story. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CustodyTableTest {
  private static final int WINDOW_DAYS = World.PERIODS.handoverWindowDays();
  private static final Scope SCOPE = Scope.asOf(LocalDate.of(2026, 10, 1));

  @TestFactory
  Stream<DynamicTest> every_story_is_read_as_the_table_says() {
    return Arrays.stream(table().split("\n(?=# )"))
        .filter(text -> text.startsWith("# "))
        .map(text -> text.lines().filter(line -> !line.isBlank()).toList())
        .map(story -> DynamicTest.dynamicTest(story.get(0).substring(2), () -> check(story)));
  }

  private static void check(List<String> story) {
    String expected = story.get(story.size() - 1);
    String lines = String.join("\n", story.subList(1, story.size() - 1));
    assertThat("-> " + reading(lines)).isEqualTo(expected);
  }

  private static String reading(String lines) {
    World world = World.of(lines);
    LogSnapshot log = world.log().snapshot();
    Sources sources = Sources.of(log.markers(), SCOPE);
    Cast cast = new Cast(world.people(), sources);
    Animal animal = new AnimalReader(log, sources).read(Chips.chip(100));
    if (Deaths.of(animal, cast, WINDOW_DAYS).isDead()) {
      return "dead";
    }
    Custody custody = Custody.of(animal, cast, WINDOW_DAYS);
    String doubt = custody.isInDoubt() ? "in doubt, " : "";
    return custody
        .custodian()
        .map(t -> doubt + "with %s since %s".formatted(name(t.who(), lines, world), t.since()))
        .orElse("not known");
  }

  private static String name(Who who, String lines, World world) {
    if (who instanceof Who.Person person) {
      return Stream.of(lines.split("[\\s/]+"))
          .filter(word -> world.reference(word).equals(person.reference()))
          .findFirst()
          .orElseThrow();
    }
    if (who instanceof Who.Organisation organisation) {
      return organisation.id().value();
    }
    return who instanceof Who.Outside outside ? outside.statedName() : "nobody";
  }

  private static String table() {
    try (InputStream in =
        Objects.requireNonNull(CustodyTableTest.class.getResourceAsStream("custody.txt"))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
