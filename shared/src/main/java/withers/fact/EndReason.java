package withers.fact;

/** Why a registration ended. */
public enum EndReason {
  CANCELLED,
  EXPIRED,
  TRANSFERRED_OUT,
  DIED,
  UNSTATED
}
