package withers.codec.finding;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import withers.chip.ChipNumber;
import withers.id.OrganisationId;
import withers.id.SourceId;

/**
 * Values of one text that come up again and again: days, organisations, numbers, people. Each is
 * kept once, so that a run of many findings takes less than half of the memory.
 */
final class Recurring {
  private final Map<Object, Object> values = new HashMap<>();
  private final Map<String, LocalDate> days = new HashMap<>();
  private final Map<String, ChipNumber> chips = new HashMap<>();
  private final Map<String, OrganisationId> organisations = new HashMap<>();
  private final Map<String, SourceId> sources = new HashMap<>();

  /**
   * The value, or one equal to it that came before.
   *
   * @param value immutable
   */
  @SuppressWarnings("unchecked") // an equal value of ours is of the same class
  <T> T one(T value) {
    Object before = values.putIfAbsent(value, value);
    return before == null ? value : (T) before;
  }

  /** The day of such a text; a text that came before is not read again. */
  LocalDate day(String text) {
    return days.computeIfAbsent(text, LocalDate::parse);
  }

  /** The number that is shown so; a text that came before is not read again. */
  ChipNumber chip(String display) {
    return chips.computeIfAbsent(display, ChipNumber::parse);
  }

  OrganisationId organisation(String id) {
    return organisations.computeIfAbsent(id, OrganisationId::new);
  }

  SourceId source(String id) {
    return sources.computeIfAbsent(id, SourceId::new);
  }
}
