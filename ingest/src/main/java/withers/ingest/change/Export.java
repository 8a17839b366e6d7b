package withers.ingest.change;

import java.time.LocalDate;
import java.util.Optional;
import withers.fact.Slot;
import withers.id.SourceId;
import withers.source.Extent;

/**
 * One export of a source, as far as comparing needs to know it.
 *
 * @param date when the source said so
 * @param windowSlot the slot whose day is a record's own day, by which the source cuts windows;
 *     empty when it never does
 */
public record Export(
    SourceId source,
    LocalDate date,
    Extent extent,
    Optional<Slot> windowSlot,
    Disappearance disappearance) {}
