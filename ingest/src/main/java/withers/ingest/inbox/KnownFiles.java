package withers.ingest.inbox;

import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import withers.id.ImportId;
import withers.ingest.profile.Profiles;
import withers.ingest.profile.SourceProfile;
import withers.ingest.receipt.Receipt;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;

/**
 * Knows files that were read before and need not be opened again: they look as they did, their
 * profiles are the same, and what the receipt says is on the log.
 */
public final class KnownFiles {

  /** The file systems that keep times most coarsely keep them by two seconds (FAT; memory). */
  private static final Duration COARSEST_TIME = Duration.ofSeconds(2);

  private final Receipts receipts;
  private final Profiles profiles;
  private final Set<ImportId> markers;

  /**
   * @param log as it is now: a receipt that is ahead of it counts for nothing
   */
  public KnownFiles(Receipts receipts, Profiles profiles, LogSnapshot log) {
    this.receipts = receipts;
    this.profiles = profiles;
    this.markers = log.markers().stream().map(ImportMarker::id).collect(Collectors.toSet());
  }

  /** The receipt of a file that need not be read again; empty for all others. */
  public Optional<Receipt> find(InboxFile file) {
    return receipts.find(file.shown()).filter(receipt -> isStillSo(receipt, file));
  }

  private boolean isStillSo(Receipt receipt, InboxFile file) {
    return receipt.state().equals(file.state())
        && hadSettled(receipt)
        && receipt.refusals().isEmpty()
        && !receipt.readings().isEmpty()
        && receipt.readings().stream().allMatch(this::isStillSo);
  }

  /** What was written just before it was read may have been written to once more, unseen. */
  private static boolean hadSettled(Receipt receipt) {
    return receipt.state().modified().plus(COARSEST_TIME).isBefore(receipt.begun());
  }

  private boolean isStillSo(Receipt.Reading reading) {
    return reading.marker().filter(markers::contains).isPresent()
        && profiles
            .find(reading.source())
            // What a joined file says shows in rows of others: only all of them together rest.
            .filter(profile -> profile.joins().isEmpty())
            .map(SourceProfile::digest)
            .filter(reading.profile()::equals)
            .isPresent();
  }
}
