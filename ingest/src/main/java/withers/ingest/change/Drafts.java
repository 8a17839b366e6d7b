package withers.ingest.change;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import withers.fact.ChipEvent;
import withers.fact.Origin;
import withers.fact.Slot;
import withers.id.ImportId;
import withers.id.RecordKey;

/**
 * What is gathered from the log of each record, as bytes. Statements of a row that follow each
 * other are put together before that; those of other chips, or of none, come later, from other
 * partitions.
 */
final class Drafts {

  /** Statements that follow each other and belong together. */
  private static final class Run {
    private final Origin origin;
    private final ImportId importId;
    private final VersionBuilder version;

    Run(Origin origin, ImportId importId, Optional<Slot> windowSlot) {
      this.origin = origin;
      this.importId = importId;
      this.version = new VersionBuilder(windowSlot);
    }

    boolean goesOn(Origin next, ImportId id) {
      return importId.equals(id)
          && origin.locator().equals(next.locator())
          && origin.key().equals(next.key())
          && origin.exportDate().equals(next.exportDate());
    }

    Draft draft(int importNumber) {
      int day = (int) origin.exportDate().toEpochDay();
      return new Draft(importNumber, origin.locator(), day, version.build());
    }
  }

  private final Optional<Slot> windowSlot;
  private final Map<ImportId, Integer> imports = new HashMap<>();
  private Optional<Run> run = Optional.empty();
  private PackedMap map = new PackedMap();

  /**
   * @param windowSlot the slot whose day is a record's own day
   */
  Drafts(Optional<Slot> windowSlot) {
    this.windowSlot = windowSlot;
  }

  /** Takes a statement as this import wrote it. */
  void add(ChipEvent statement, ImportId importId) {
    Origin origin = statement.origin();
    if (run.isEmpty() || !run.get().goesOn(origin, importId)) {
      run.ifPresent(this::pack);
      run = Optional.of(new Run(origin, importId, windowSlot));
    }
    run.get().version.add(statement);
  }

  private void pack(Run over) {
    byte[] key = PackedTimelines.bytes(over.origin.key());
    List<Draft> drafts = map.get(key).map(Draft::read).orElseGet(ArrayList::new);
    add(over.draft(imports.computeIfAbsent(over.importId, id -> imports.size())), drafts);
    map.put(key, Draft.write(drafts));
    if (map.isWasteful()) {
      PackedMap wasteful = map;
      map = new PackedMap();
      wasteful.drain(map::put);
    }
  }

  private static void add(Draft part, List<Draft> drafts) {
    for (int i = drafts.size() - 1; i >= 0; i--) {
      if (drafts.get(i).belongsTo(part)) {
        drafts.set(i, drafts.get(i).with(part));
        return;
      }
    }
    drafts.add(part);
  }

  /** Hands over the drafts of each record, and lets go of them. */
  void drain(BiConsumer<RecordKey, List<Draft>> visitor) {
    run.ifPresent(this::pack);
    map.drain((key, drafts) -> visitor.accept(PackedTimelines.key(key), Draft.read(drafts)));
  }
}
