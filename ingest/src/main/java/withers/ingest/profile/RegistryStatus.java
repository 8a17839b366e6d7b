package withers.ingest.profile;

import java.util.Optional;
import withers.fact.EndReason;

/** What a registry's word for the state of a record, or for the reason of its end, can mean. */
public enum RegistryStatus {
  ACTIVE(Optional.empty()),
  CANCELLED(Optional.of(EndReason.CANCELLED)),
  EXPIRED(Optional.of(EndReason.EXPIRED)),
  TRANSFERRED_OUT(Optional.of(EndReason.TRANSFERRED_OUT)),
  DIED(Optional.of(EndReason.DIED)),
  ENDED(Optional.of(EndReason.UNSTATED));

  private final Optional<EndReason> end;

  RegistryStatus(Optional<EndReason> end) {
    this.end = end;
  }

  /** Why the registration ended; empty while it has not. */
  public Optional<EndReason> end() {
    return end;
  }
}
