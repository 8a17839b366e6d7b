package withers.fact;

import java.time.LocalDate;

/**
 * A fact, what it is about, and where it comes from: the unit that the log stores.
 *
 * @param date the day that the fact speaks of, in the source's zone. Day precision is not an instant. A state row
 *     without a date of its own speaks of its export date.
 */
public record ChipEvent(Subject subject, Origin origin, LocalDate date, Fact fact) {}
