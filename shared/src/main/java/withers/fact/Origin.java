package withers.fact;

import java.time.LocalDate;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * Where a statement comes from. Source, record key and slot are the identity of a fact; the export
 * date says when the source said so.
 */
public record Origin(
    SourceId source, RecordKey key, Slot slot, LocalDate exportDate, Locator locator) {}
