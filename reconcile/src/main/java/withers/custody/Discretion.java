package withers.custody;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import withers.audit.Confidential;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.contact.ContactVault.RecordName;
import withers.fact.ChipEvent;
import withers.fact.Party;
import withers.history.Animal;
import withers.history.History;
import withers.history.Statement;
import withers.id.RecordKey;

/**
 * What nothing is told of, because somebody marked it as confidential: animals by their numbers,
 * and those that records about a person name. Immutable.
 */
public record Discretion(
    Set<ContactRef> references, Set<RecordName> records, Set<ChipNumber> numbers) {

  /** Everything may be told to whom it concerns. */
  public static final Discretion NONE = new Discretion(Set.of(), Set.of(), Set.of());

  public Discretion {
    references = Set.copyOf(references);
    records = Set.copyOf(records);
    numbers = Set.copyOf(numbers);
  }

  /** What is marked after all these, in the order in which they were written. */
  public static Discretion of(Collection<Confidential> written) {
    return of(standing(written));
  }

  private static Discretion of(List<Confidential> marks) {
    Set<ContactRef> references = new HashSet<>();
    Set<RecordName> records = new HashSet<>();
    Set<ChipNumber> numbers = new HashSet<>();
    for (Confidential mark : marks) {
      references.addAll(mark.references());
      records.addAll(mark.records());
      numbers.addAll(mark.numbers());
    }
    return new Discretion(references, records, numbers);
  }

  /** The marks that nobody lifted. A lift takes those away that say nothing beyond it. */
  public static List<Confidential> standing(Collection<Confidential> written) {
    List<Confidential> marks = new ArrayList<>();
    for (Confidential one : written) {
      if (one.lifted()) {
        marks.removeIf(mark -> isLiftedBy(one, mark));
      } else {
        marks.add(one);
      }
    }
    return List.copyOf(marks);
  }

  /** A person's mark goes with the person, whatever numbers came with it. */
  private static boolean isLiftedBy(Confidential lift, Confidential mark) {
    return mark.references().isEmpty()
        ? lift.numbers().containsAll(mark.numbers())
        : lift.references().containsAll(mark.references());
  }

  public boolean isNone() {
    return equals(NONE);
  }

  /** Whether nothing is to be told of an animal. */
  public boolean covers(Animal animal) {
    return !isNone()
        && (animal.chips().stream().anyMatch(numbers::contains)
            || animal.statements().stream().anyMatch(this::covers));
  }

  /** Whether nothing is to be told of what is said of one number. */
  public boolean covers(History history) {
    return !isNone()
        && (numbers.contains(history.chip())
            || history.statements().stream().anyMatch(this::covers));
  }

  private boolean covers(Statement statement) {
    return covers(statement.event());
  }

  /** Whether nothing is to be told of an animal of which this is said. */
  public boolean covers(ChipEvent event) {
    return !isNone()
        && (records.contains(new RecordName(event.origin().source(), event.origin().key()))
            || Parties.of(event.fact()).anyMatch(this::covers));
  }

  private boolean covers(Party party) {
    return party instanceof Party.Contact contact && references.contains(contact.reference());
  }

  /** Whether a follow-up is about one of the numbers, or of the records. */
  public boolean covers(CaseKey key) {
    return key.anchor() instanceof Anchor.Chip chip
        ? numbers.contains(chip.number())
        : key.anchor() instanceof Anchor.Source source
            && records.contains(new RecordName(source.id(), new RecordKey(key.recordKey())));
  }
}
