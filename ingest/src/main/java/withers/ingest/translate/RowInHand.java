package withers.ingest.translate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import withers.chip.Candidate;
import withers.chip.Reading;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.Referenced;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Locator;
import withers.fact.Origin;
import withers.fact.Party;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.id.RecordKey;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.PartyName;
import withers.ingest.profile.SourceProfile;
import withers.ingest.rows.Row;
import withers.ingest.rows.Typed;

/**
 * A row being translated: its cells by our names, and what it states so far. A cell that can't be
 * understood is noted, and reads as empty; the first one noted rejects the row.
 */
final class RowInHand {

  private final SourceProfile profile;
  private final Layout layout;
  private final Surroundings around;
  private final Row row;
  private final RecordKey key;
  private final Locator locator;
  private final List<ChipEvent> statements = new ArrayList<>(4);
  private final List<Referenced> contacts = new ArrayList<>(1);
  private Optional<Reject> reject = Optional.empty();

  RowInHand(SourceProfile profile, Layout layout, Surroundings around, Row row, RecordKey key) {
    this.profile = profile;
    this.layout = layout;
    this.around = around;
    this.row = row;
    this.key = key;
    this.locator = new Locator(around.file(), row.line());
  }

  String text(ColumnName column) {
    return layout.text(column, row);
  }

  Optional<String> optionalText(ColumnName column) {
    return Optional.of(text(column)).filter(text -> !text.isEmpty());
  }

  Optional<String> animalId() {
    return Optional.of(layout.animalId(row)).filter(text -> !text.isEmpty());
  }

  /** A day; empty when the cell is, or when it holds noughts only, as some programs write. */
  Optional<LocalDate> day(ColumnName column) {
    Typed typed = layout.typed(column, row);
    return typed.kind() == Typed.Kind.DAY ? typed.day() : day(column, text(column));
  }

  private Optional<LocalDate> day(ColumnName column, String text) {
    if (isBlankDay(text)) {
      return Optional.empty();
    }
    DatePattern pattern = profile.format().date();
    Optional<LocalDate> day = pattern.read(text);
    if (day.isEmpty()) {
      reject(
          Reject.Code.DAY_REFUSED,
          column,
          "Expected a day written as %s, such as %s, but found other text"
              .formatted(pattern, pattern.example()));
    }
    return day;
  }

  private static boolean isBlankDay(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c >= '1' && c <= '9' || Character.isLetter(c)) {
        return false;
      }
    }
    return true;
  }

  /** A word's meaning; empty when neither the row nor the profile has one. */
  <E extends Enum<E>> Optional<E> word(ColumnName column, Class<E> type) {
    Optional<String> word = optionalText(column).or(() -> layout.fixed(column));
    Optional<E> meaning = word.flatMap(text -> layout.words(column).read(text, type));
    if (word.isPresent() && meaning.isEmpty()) {
      reject(
          Reject.Code.WORD_UNKNOWN,
          column,
          "Expected a word that values: %s turns into one of ours, but found another"
              .formatted(column.word()));
    }
    return meaning;
  }

  /** A word of a column that takes any text. */
  Optional<String> freeWord(ColumnName column) {
    return optionalText(column).map(layout.words(column)::text).or(() -> layout.fixed(column));
  }

  /** What a number's cell is about: a chip, a damaged number, or nothing. */
  Optional<Subject> number(ColumnName column) {
    String text = text(column);
    return text.isEmpty() || isOtherwiseTyped(column) ? Optional.empty() : number(column, text);
  }

  private boolean isOtherwiseTyped(ColumnName column) {
    Typed typed = layout.typed(column, row);
    if (typed.kind() == Typed.Kind.TEXT) {
      return false;
    }
    reject(
        Reject.Code.NUMBER_REFUSED,
        column,
        "Expected a chip number, but found %s; have the column exported as text"
            .formatted(typed.found()));
    return true;
  }

  private Optional<Subject> number(ColumnName column, String text) {
    Reading reading = around.numbers().read(text);
    return switch (reading.kind()) {
      case ACCEPTED -> Optional.of(new Subject.Chip(((Reading.Accepted) reading).number()));
      case TENTATIVE -> Optional.of(new Subject.Chip(((Reading.Tentative) reading).number()));
      case GUESSED -> Optional.of(damaged((Reading.Guessed) reading));
      case TRUNCATED -> Optional.of(new Subject.Damaged(text, List.of()));
      case NO_NUMBER -> Optional.empty();
      case REFUSED -> {
        reject(Reject.Code.NUMBER_REFUSED, column, ((Reading.Refused) reading).message());
        yield Optional.empty();
      }
    };
  }

  private static Subject damaged(Reading.Guessed reading) {
    return new Subject.Damaged(
        reading.original(), reading.candidates().stream().map(Candidate::number).toList());
  }

  /** Who stands in these columns. */
  Party party(PartyName name) {
    return layout.party(name).map(this::party).orElseGet(Party.Unstated::new);
  }

  private Party party(PartyCells cells) {
    String organisation = cells.organisation(row);
    if (!organisation.isEmpty()) {
      return new Party.Organisation(organisation);
    }
    Contact contact = cells.contact(row);
    if (contact.isNobody()) {
      return new Party.Unstated();
    }
    ContactRef reference = around.references().apply(contact);
    contacts.add(new Referenced(contact, reference));
    return new Party.Contact(reference, cells.clientId(row));
  }

  void state(Subject subject, Slot slot, Optional<LocalDate> date, Fact fact) {
    Origin origin = new Origin(profile.id(), key, slot, around.exportDate(), locator);
    statements.add(new ChipEvent(subject, origin, date, fact));
  }

  boolean hasStated(Slot slot) {
    return statements.stream().anyMatch(event -> event.origin().slot() == slot);
  }

  void reject(Reject.Code code, ColumnName column, String message) {
    reject(new Reject(code, layout.headerOf(column), message));
  }

  void reject(Reject first) {
    if (reject.isEmpty()) {
      reject = Optional.of(first);
    }
  }

  Translation result() {
    return reject
        .<Translation>map(why -> new Translation.Rejected(Optional.of(key), why))
        .orElseGet(() -> new Translation.Stated(key, statements, contacts));
  }
}
