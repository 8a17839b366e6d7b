package withers.world;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import withers.fact.ChipEvent;
import withers.fact.Origin;
import withers.fact.RandomEvents;
import withers.fact.Subject;
import withers.id.RecordKey;
import withers.id.SourceId;

/** Worlds of events of every shape, sensible or not, about few chips and records. */
public final class AnyEvents {
  private static final List<String> SOURCES = List.of("north", "south-slice", "shelter", "clinic");

  private final Random random;
  private final RandomEvents events;

  private AnyEvents(long seed) {
    this.random = new Random(seed);
    this.events = new RandomEvents(seed);
  }

  public static World world(long seed, int count) {
    AnyEvents any = new AnyEvents(seed);
    Map<String, List<ChipEvent>> exports =
        java.util.stream.Stream.generate(any::event)
            .limit(count)
            .collect(
                Collectors.groupingBy(
                    event -> event.origin().source() + " " + event.origin().exportDate(),
                    LinkedHashMap::new,
                    Collectors.toList()));
    World world = World.of("");
    exports.values().forEach(said -> world.add(export(said)));
    return world;
  }

  private static Export export(List<ChipEvent> said) {
    Origin origin = said.get(0).origin();
    return Export.full(origin.source(), origin.exportDate(), said);
  }

  private ChipEvent event() {
    ChipEvent event = events.event();
    Origin origin =
        new Origin(
            new SourceId(SOURCES.get(random.nextInt(SOURCES.size()))),
            new RecordKey("r" + random.nextInt(4)),
            event.origin().slot(),
            LocalDate.of(2026, 9, 30).minusMonths(random.nextInt(6)),
            event.origin().locator());
    return new ChipEvent(subject(), origin, event.date(), event.fact());
  }

  private Subject subject() {
    return switch (random.nextInt(8)) {
      case 0 -> new Subject.Animal("a" + random.nextInt(3));
      case 1 -> new Subject.Damaged("?", List.of(chip(), chip()));
      case 2 ->
          random.nextBoolean()
              ? new Subject.Damaged("9.99000E+14", List.of())
              : new Subject.Chip(Chips.cut(random.nextInt(2)));
      default -> new Subject.Chip(chip());
    };
  }

  private withers.chip.ChipNumber chip() {
    return Chips.chip(1 + random.nextInt(4));
  }
}
