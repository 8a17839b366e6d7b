package withers.fact;

/** Why a source takes a statement back. */
public enum WithdrawalReason {
  CANCELLED,
  NUMBER_CORRECTED,
  SLOT_EMPTIED
}
