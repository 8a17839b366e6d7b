package withers.codec.finding;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * Values of one text that come up again and again: days, organisations, numbers, people. Each is
 * kept once where it comes up again soon, as most do; what identifies a follow-up is kept once
 * wherever it comes up. So a run of many findings takes less than half of the memory.
 */
final class Recurring {
  private final Recent<Object, Object> values = new Recent<>(Function.identity());
  private final Recent<String, ChipNumber> chips = new Recent<>(ChipNumber::parse);
  private final Recent<ChipNumber, Anchor> anchors = new Recent<>(Anchor.Chip::new);
  private final Recent<String, RecordKey> keys = new Recent<>(RecordKey::new);
  private final Recent<String, ContactRef> contacts = new Recent<>(ContactRef::parse);
  private final Map<String, LocalDate> days = new HashMap<>();
  private final Map<String, OrganisationId> organisations = new HashMap<>();
  private final Map<String, SourceId> sources = new HashMap<>();
  private final Map<CaseKey, CaseKey> followUps = new HashMap<>();

  /**
   * The value, or one equal to it that came lately.
   *
   * @param value immutable
   */
  @SuppressWarnings("unchecked") // an equal value of ours is of the same class
  <T> T one(T value) {
    return (T) values.of(value);
  }

  /** The day of such a text; a text that came before is not read again. */
  LocalDate day(String text) {
    return days.computeIfAbsent(text, LocalDate::parse);
  }

  /** The number that is shown so; a text that came lately is not read again. */
  ChipNumber chip(String display) {
    return chips.of(display);
  }

  Anchor anchor(String display) {
    return anchors.of(chip(display));
  }

  RecordKey key(String text) {
    return keys.of(text);
  }

  ContactRef contact(String reference) {
    return contacts.of(reference);
  }

  OrganisationId organisation(String id) {
    return organisations.computeIfAbsent(id, OrganisationId::new);
  }

  SourceId source(String id) {
    return sources.computeIfAbsent(id, SourceId::new);
  }

  /** The key, or one equal to it that came before, wherever that was. */
  CaseKey followUp(CaseKey key) {
    CaseKey before = followUps.putIfAbsent(key, key);
    return before == null ? key : before;
  }
}
