package withers.ingest.change;

import java.util.Optional;
import withers.fact.ChipEvent;
import withers.fact.Locator;
import withers.fact.Slot;
import withers.id.ImportId;

/**
 * A version whose statements are being gathered from the log. They belong together when one import
 * read them at one place, or restated them, for one export date.
 */
final class Draft {

  private final ImportId importId;
  private final Locator locator;
  private final int day;
  private final VersionBuilder version;

  Draft(ImportId importId, ChipEvent first, Optional<Slot> windowSlot) {
    this.importId = importId;
    this.locator = first.origin().locator();
    this.day = (int) first.origin().exportDate().toEpochDay();
    this.version = new VersionBuilder(windowSlot);
  }

  boolean takes(ImportId id, ChipEvent statement) {
    return importId.equals(id)
        && locator.equals(statement.origin().locator())
        && day == statement.origin().exportDate().toEpochDay();
  }

  void add(ChipEvent statement) {
    version.add(statement);
  }

  int day() {
    return day;
  }

  Version version() {
    return version.build();
  }
}
