package withers.damage;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.chip.ChipNumber;
import withers.chip.LostDigits;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Locator;
import withers.fact.Origin;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.finding.Damage;
import withers.history.History;
import withers.history.Statement;
import withers.id.ImportId;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.log.ImportMarker;
import withers.log.Tally;
import withers.source.Extent;

@DisplayNameGeneration(ReplaceUnderscores.class)
class KnownNumbersTest {

  private static final int SEEDS = 200;
  private static final LocalDate DATE = LocalDate.of(2026, 9, 30);
  private static final List<SourceId> SOURCES =
      List.of(new SourceId("clinic"), new SourceId("north"), new SourceId("shelter"));

  /** The same answer as by looking at every number. */
  @Test
  void finds_what_a_look_at_every_number_finds() {
    for (long seed = 0; seed < SEEDS; seed++) {
      Random random = new Random(seed);
      Map<ChipNumber, Set<SourceId>> spokenOf = spokenOf(random);
      KnownNumbers known = known(spokenOf, random);
      for (int i = 0; i < 20; i++) {
        LostDigits digits = digits(random);
        SourceId but = SOURCES.get(random.nextInt(SOURCES.size()));

        List<ChipNumber> alike =
            spokenOf.entrySet().stream()
                .filter(one -> digits.admits(one.getKey()))
                .filter(one -> !LostDigits.endsInZeros(one.getKey()))
                .filter(one -> !one.getValue().equals(Set.of(but)))
                .map(Map.Entry::getKey)
                .toList();

        assertThat(known.to(digits, but))
            .as("seed %d, %s", seed, digits)
            .isEqualTo(new Alike(alike.stream().limit(Damage.SHOWN).toList(), alike.size()));
      }
    }
  }

  @Test
  void a_network_that_knows_nothing_has_no_candidates() {
    assertThat(new KnownNumbers(List.of()).to(new LostDigits("999000", 9), SOURCES.get(0)))
        .isEqualTo(new Alike(List.of(), 0));
  }

  private static Map<ChipNumber, Set<SourceId>> spokenOf(Random random) {
    Map<ChipNumber, Set<SourceId>> spokenOf = new TreeMap<>();
    for (int i = 0; i < 200; i++) {
      spokenOf
          .computeIfAbsent(number(random), number -> new TreeSet<>())
          .add(SOURCES.get(random.nextInt(SOURCES.size())));
    }
    return spokenOf;
  }

  /** Few leading digits, so that many numbers begin alike; some end in zeros; all kinds. */
  private static ChipNumber number(Random random) {
    return switch (random.nextInt(5)) {
      case 0 -> ChipNumber.nineDigit(100_000_000 + random.nextInt(2000));
      case 1 ->
          ChipNumber.tenCharacter("12345678" + Integer.toString(36 + random.nextInt(1200), 36));
      case 2 -> ChipNumber.iso(985 + random.nextInt(3), random.nextInt(3) * 1_000_000L);
      default ->
          ChipNumber.iso(
              985 + random.nextInt(3), random.nextInt(274) * 1_000_000_000L + random.nextInt(9));
    };
  }

  private static LostDigits digits(Random random) {
    ChipNumber number = number(random);
    String display = number.display();
    boolean isDecimal = LostDigits.isDecimal(number);
    int surviving = isDecimal ? 1 + random.nextInt(display.length() - 1) : 5;
    return new LostDigits(display.substring(0, surviving), display.length() - surviving);
  }

  private static KnownNumbers known(Map<ChipNumber, Set<SourceId>> spokenOf, Random random) {
    List<KnownNumbers.Part> parts = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      parts.add(new KnownNumbers.Part());
    }
    spokenOf.forEach((number, by) -> parts.get(random.nextInt(3)).add(history(number, by)));
    return new KnownNumbers(parts);
  }

  private static History history(ChipNumber number, Set<SourceId> by) {
    return new History(
        number,
        by.stream().map(source -> statement(number, source)).toList(),
        Optional.empty(),
        true);
  }

  private static Statement statement(ChipNumber number, SourceId source) {
    Origin origin = new Origin(source, new RecordKey("r1"), Slot.REUNION, DATE, new Locator(0, 1));
    ChipEvent event =
        new ChipEvent(new Subject.Chip(number), origin, Optional.empty(), new Fact.Reunited());
    return new Statement(number, event, marker(source), DATE, true);
  }

  private static ImportMarker marker(SourceId source) {
    return new ImportMarker(
        new ImportId(new UUID(0, 1)),
        Optional.empty(),
        source,
        Optional.empty(),
        DATE,
        new Extent.Full(),
        List.of(),
        new Tally(0, 0, 0, 0, 0, 0),
        new TreeSet<>(),
        new TreeSet<>(),
        Instant.EPOCH);
  }
}
