package withers.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Species;
import withers.log.LogDamagedException;

/**
 * Two made-up earlier versions of one fact: first without the sex and the day of birth, then
 * without the day of birth. What they wrote is read by a table that knows their way up.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class UpcastTest {

  private static final Field<?> SPECIES =
      new Field<>("species", WireType.oneOf(WireConstants.SPECIES));
  private static final Field<?> NAME = new Field<>("name", WireType.TEXT.optional());
  private static final Field<?> SEX = new Field<>("sex", WireType.TEXT.optional());

  private static final Family<ChipEvent> VERSION_1 =
      table(
          Shape.of(1, "described", Fact.Described.class)
              .field("species", WireType.oneOf(WireConstants.SPECIES), Fact.Described::species)
              .field("name", WireType.TEXT.optional(), Fact.Described::name)
              .makes(v -> described(v.and(Optional.empty(), Optional.empty()))));

  private static final Family<ChipEvent> VERSION_2 =
      table(
          Shape.of(1, "described", Fact.Described.class)
              .once(List.of(SPECIES, NAME), v -> v.and(Optional.of("unknown")))
              .field("species", WireType.oneOf(WireConstants.SPECIES), Fact.Described::species)
              .field("name", WireType.TEXT.optional(), Fact.Described::name)
              .field("sex", WireType.TEXT.optional(), Fact.Described::sex)
              .makes(v -> described(v.and(Optional.empty()))));

  private static final Family<ChipEvent> VERSION_3 =
      table(
          Shape.of(1, "described", Fact.Described.class)
              .once(List.of(SPECIES, NAME), v -> v.and(Optional.of("unknown")))
              .once(List.of(SPECIES, NAME, SEX), v -> v.and(Optional.empty()))
              .field("species", WireType.oneOf(WireConstants.SPECIES), Fact.Described::species)
              .field("name", WireType.TEXT.optional(), Fact.Described::name)
              .field("sex", WireType.TEXT.optional(), Fact.Described::sex)
              .field("born", WireType.DAY.optional(), Fact.Described::born)
              .makes(UpcastTest::described));

  private static final ChipEvent STATED = Samples.FACTS.get(0);

  @Test
  void a_chunk_of_version_1_is_lifted_through_version_2() {
    byte[] old = new BinaryChunks<>(VERSION_1).encode(List.of(STATED, STATED));
    assertThat(decoded(VERSION_3, old)).containsExactly(lifted("unknown"), lifted("unknown"));
  }

  @Test
  void a_chunk_of_version_2_is_lifted_once() {
    byte[] old = new BinaryChunks<>(VERSION_2).encode(List.of(STATED));
    assertThat(decoded(VERSION_3, old)).containsExactly(lifted("f"));
  }

  @Test
  void json_of_version_1_is_lifted_too() {
    String old = new Json<>(VERSION_1).write(STATED);
    assertThat(old).contains("\"type\":\"described\",\"version\":1").doesNotContain("born");
    assertThat(new Json<>(VERSION_3).read(old)).isEqualTo(lifted("unknown"));
  }

  @Test
  void what_is_written_has_the_newest_version() {
    String json = new Json<>(VERSION_3).write(STATED);
    assertThat(json).contains("\"type\":\"described\",\"version\":3");
    assertThat(new Json<>(VERSION_3).read(json)).isEqualTo(STATED);
  }

  @Test
  void an_older_program_refuses_a_newer_version() {
    byte[] newer = new BinaryChunks<>(VERSION_3).encode(List.of(STATED));
    assertThatThrownBy(() -> decoded(VERSION_2, newer))
        .isInstanceOf(LogDamagedException.class)
        .hasMessage(
            "Expected version 1 to 2 of the fact 'described', but found version 3: a newer program"
                + " wrote it; use that one");
  }

  private static ChipEvent lifted(String sex) {
    return new ChipEvent(
        STATED.subject(),
        STATED.origin(),
        STATED.date(),
        new Fact.Described(Species.CAT, Optional.of("Nelly"), Optional.of(sex), Optional.empty()));
  }

  private static Fact.Described described(Values v) {
    return new Fact.Described(v.at(0), v.at(1), v.at(2), v.at(3));
  }

  private static Family<ChipEvent> table(Shape<Fact.Described> described) {
    return WireTable.eventsOf(Family.of("fact", Fact.class, described));
  }

  private static List<ChipEvent> decoded(Family<ChipEvent> table, byte[] chunk) {
    List<ChipEvent> events = new ArrayList<>();
    new BinaryChunks<>(table).decode(chunk, events::add);
    return events;
  }
}
