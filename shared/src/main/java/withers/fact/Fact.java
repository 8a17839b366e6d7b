package withers.fact;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;
import withers.id.RecordKey;

/**
 * One thing that a record states about a chip or its animal, in the trade's words. Immutable;
 * people appear as references into the contact vault only. Wire names and versions are kept apart,
 * in the codec's table.
 */
public sealed interface Fact {

  /** What the animal is: the fields by which staff recognise it. Any of them may be missing. */
  record Described(
      Species species, Optional<String> name, Optional<String> sex, Optional<LocalDate> born)
      implements Fact {}

  /**
   * A range of numbers was supplied to a purchaser, with or without a prepaid registration each.
   */
  record Supplied(NumberRange range, Party purchaser, boolean prepaid) implements Fact {}

  /** The chip was implanted. */
  record Implanted(Party implanter) implements Fact {}

  /** The same animal carries another chip too. Written once to each of the two chips. */
  record PairedWith(ChipNumber other) implements Fact {}

  /** The animal changed hands, for good or for a time: {@link Basis#temporary()} tells which. */
  record HandedOver(Party giver, Party receiver, Basis basis) implements Fact {}

  /** A clinic saw the animal, brought by (or on the account of) this client. */
  record Attended(Party client) implements Fact {}

  /** Somebody passed a scanner over the animal. */
  record Scanned(ScanResult result) implements Fact {}

  /**
   * A registry's record of the number: the account that holds it, when stated, and a contact for
   * each role that is filled.
   */
  record Registered(Optional<String> account, Map<ContactRole, Party> contacts) implements Fact {
    public Registered {
      contacts = Map.copyOf(contacts);
    }

    public Optional<Party> contact(ContactRole role) {
      return Optional.ofNullable(contacts.get(role));
    }
  }

  /** The registry states that the registration has ended. */
  record RegistrationEnded(EndReason reason) implements Fact {}

  /**
   * Somebody asked a registry about the number, and this is the answer.
   *
   * @param registry the registry's name
   * @param askedBy in which role it was asked, never a person's name; empty when not stated
   */
  record LookedUp(String registry, LookUpAnswer answer, Optional<String> askedBy) implements Fact {

    /** An answer of which nobody stated who asked for it. */
    public LookedUp(String registry, LookUpAnswer answer) {
      this(registry, answer, Optional.empty());
    }
  }

  /** The animal was reported lost. */
  record Lost(Party reporter) implements Fact {}

  /** The animal was found and is with this holder, waiting for its people. */
  record Found(Party holder) implements Fact {}

  /** The animal is back with its people. */
  record Reunited() implements Fact {}

  /** The animal died. */
  record Died() implements Fact {}

  /**
   * A full export no longer lists the record. The last statements stand and age: absence is not a
   * fact.
   */
  record NoLongerListed() implements Fact {}

  /** The source takes back what it said in this slot about this number, with the reason. */
  record Withdrawn(WithdrawalReason reason) implements Fact {}

  /** The source's own animal id belongs to this chip. */
  record Linked(String animalId) implements Fact {}

  /**
   * The source keeps this record under another key from this export date on: an operator has
   * confirmed it. What was said under the old key before that date is the new key's.
   */
  record Rekeyed(RecordKey key) implements Fact {}

  /** The permitted shapes, in the order of the catalogue. */
  static List<Class<? extends Fact>> shapes() {
    return List.of(
        Described.class,
        Supplied.class,
        Implanted.class,
        PairedWith.class,
        HandedOver.class,
        Attended.class,
        Scanned.class,
        Registered.class,
        RegistrationEnded.class,
        LookedUp.class,
        Lost.class,
        Found.class,
        Reunited.class,
        Died.class,
        NoLongerListed.class,
        Withdrawn.class,
        Linked.class,
        Rekeyed.class);
  }
}
