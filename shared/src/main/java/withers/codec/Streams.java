package withers.codec;

import java.util.List;
import java.util.Optional;
import withers.audit.AuditEvent;
import withers.cases.CaseEvent;
import withers.chip.ChipNumber;
import withers.delivery.Delivery;
import withers.fact.ChipEvent;
import withers.fact.Subject;
import withers.log.LogStream;
import withers.log.Partitions;

/** The streams of the log. Names and partition counts are for good. */
public final class Streams {

  /** What concerns one chip, by its number. */
  public static final LogStream<ChipEvent> CHIPS = chipEvents("chips", 64);

  /** Ranges of numbers that were supplied. */
  public static final LogStream<ChipEvent> SUPPLY = chipEvents("supply", 1);

  /** What can't be said of a chip yet: damaged numbers, and animals without a number. */
  public static final LogStream<ChipEvent> UNPLACED = chipEvents("unplaced", 1);

  /** The life of follow-ups. */
  public static final LogStream<CaseEvent> CASES =
      new LogStream<>("cases", 1, new BinaryChunks<>(WireTable.CASES));

  /** What became of lists that were sent by mail. */
  public static final LogStream<Delivery> DELIVERIES =
      new LogStream<>("deliveries", 1, new BinaryChunks<>(WireTable.DELIVERIES));

  /** Who saw, and who had removed, what is held on people. */
  public static final LogStream<AuditEvent> AUDIT =
      new LogStream<>("audit", 1, new BinaryChunks<>(WireTable.AUDIT));

  /** The name of the stream of import markers, which every log keeps in its own way. */
  public static final String IMPORTS = "imports";

  private Streams() {}

  /** All streams of events. */
  public static List<LogStream<?>> all() {
    return List.of(CHIPS, SUPPLY, UNPLACED, CASES, DELIVERIES, AUDIT);
  }

  /** A partition of a stream. */
  public record Place(LogStream<ChipEvent> stream, int partition) {}

  /** Where an event belongs, by what it is about. */
  public static Place placeOf(ChipEvent event) {
    Optional<ChipNumber> chip = event.subject().chip();
    if (chip.isPresent()) {
      return new Place(CHIPS, Partitions.of(chip.get(), CHIPS.partitions()));
    }
    return new Place(event.subject() instanceof Subject.Range ? SUPPLY : UNPLACED, 0);
  }

  private static LogStream<ChipEvent> chipEvents(String name, int partitions) {
    return new LogStream<>(name, partitions, new BinaryChunks<>(WireTable.EVENTS));
  }
}
