package withers.fact;

import java.time.LocalDate;
import java.util.Optional;
import withers.id.RecordKey;

/**
 * A fact, what it is about, and where it comes from: the unit that the log stores.
 *
 * @param date the day that the fact speaks of, in the source's zone (day precision is not an
 *     instant); empty when the record states none
 */
public record ChipEvent(Subject subject, Origin origin, Optional<LocalDate> date, Fact fact) {

  /** The day that the fact speaks of, or else the day on which the source said so. */
  public LocalDate day() {
    return date.orElse(origin.exportDate());
  }

  /** The same statement under another key of its source. */
  public ChipEvent under(RecordKey key) {
    Origin there =
        new Origin(origin.source(), key, origin.slot(), origin.exportDate(), origin.locator());
    return new ChipEvent(subject, there, date, fact);
  }
}
