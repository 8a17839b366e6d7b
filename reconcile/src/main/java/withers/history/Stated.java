package withers.history;

import java.time.LocalDate;
import java.util.Comparator;
import withers.codec.StatementDigest;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Locator;
import withers.fact.Slot;
import withers.fact.WithdrawalReason;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.log.ImportMarker;

/** A statement as the log brought it, and the import that brought it. */
public record Stated(ChipEvent event, ImportMarker marker) {

  /**
   * The order of statements about one number: by record and slot, then the order of
   * docs/findings.md. Equal statements of one date compare as equal.
   */
  static final Comparator<Stated> ORDER = Stated::inOrder;

  /** By hand: a run compares statements more often than anything else. */
  private static int inOrder(Stated one, Stated other) {
    int order = one.source().compareTo(other.source());
    if (order == 0) {
      order = one.key().compareTo(other.key());
    }
    if (order == 0) {
      order = one.slot().compareTo(other.slot());
    }
    if (order == 0) {
      order = one.exportDate().compareTo(other.exportDate());
    }
    if (order == 0) {
      order = Boolean.compare(other.isMark(), one.isMark());
    }
    return order == 0 ? byContent(one, other) : order;
  }

  public SourceId source() {
    return event.origin().source();
  }

  public RecordKey key() {
    return event.origin().key();
  }

  public Slot slot() {
    return event.origin().slot();
  }

  public LocalDate exportDate() {
    return event.origin().exportDate();
  }

  public Fact fact() {
    return event.fact();
  }

  /**
   * File and line, for people to look up, or that it came from no file; never part of what is
   * compared.
   */
  public String where() {
    if (marker.files().isEmpty()) {
      return "recorded by hand";
    }
    Locator locator = event.origin().locator();
    String file =
        locator.file() < marker.files().size() ? marker.files().get(locator.file()).name() : "?";
    return file + ":" + locator.line();
  }

  boolean isDisappearance() {
    return fact() instanceof Fact.NoLongerListed;
  }

  boolean isRekeying() {
    return fact() instanceof Fact.Rekeyed;
  }

  boolean isWithdrawal() {
    return fact() instanceof Fact.Withdrawn;
  }

  /** Whether it takes back the disappearance of its date. */
  boolean isStillListed() {
    return isWithdrawn(WithdrawalReason.STILL_LISTED);
  }

  /** Whether it takes something back because the source no longer holds the record. */
  boolean isCancellation() {
    return isWithdrawn(WithdrawalReason.CANCELLED);
  }

  /** Whether it takes something back because the record has another number. */
  boolean isCorrection() {
    return isWithdrawn(WithdrawalReason.NUMBER_CORRECTED);
  }

  private boolean isWithdrawn(WithdrawalReason reason) {
    return fact() instanceof Fact.Withdrawn gone && gone.reason() == reason;
  }

  /** Whether it speaks about other statements rather than about the animal. */
  boolean isMark() {
    return isDisappearance() || isWithdrawal();
  }

  boolean isOfRecord(Stated other) {
    return key().equals(other.key()) && source().equals(other.source());
  }

  boolean isOfSlot(Stated other) {
    return slot() == other.slot() && isOfRecord(other);
  }

  boolean saysTheSame(Stated other) {
    return event.date().equals(other.event.date()) && fact().equals(other.fact());
  }

  /** Digests cost something: only neighbours that would else be equal need them. */
  private static int byContent(Stated one, Stated other) {
    return one.saysTheSame(other)
        ? 0
        : StatementDigest.of(one.event).compareTo(StatementDigest.of(other.event));
  }
}
