package withers.fact;

/** Why a source takes a statement back. */
public enum WithdrawalReason {
  CANCELLED,
  NUMBER_CORRECTED,
  SLOT_EMPTIED,
  /**
   * Only of a disappearance, in the slot {@link Slot#LISTING}: the record was in another export of
   * that date, in a way that says nothing about this number by itself.
   */
  STILL_LISTED
}
