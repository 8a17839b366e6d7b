package withers.log.kafka;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import withers.id.ImportId;
import withers.log.Contents;

/** Imports that this program is writing, and what it has written of them. */
final class OpenImports {

  /** Begins an attempt on the log, and tells its number. */
  @FunctionalInterface
  interface Beginning {
    long begin(ImportId id);
  }

  private record Open(Attempt attempt, Map<Contents.Place, Contents.Count> counts) {}

  private final JournalReader journal;
  private final Beginning beginning;
  private final Map<ImportId, Open> open = new HashMap<>();

  OpenImports(JournalReader journal, Beginning beginning) {
    this.journal = journal;
    this.beginning = beginning;
  }

  /**
   * The attempt that chunks of an import belong to.
   *
   * @throws IllegalStateException when the import is committed already
   */
  synchronized Attempt attempt(ImportId id) {
    Open known = open.get(id);
    if (known != null) {
      return known.attempt();
    }
    journal.refresh();
    journal.requireUncommitted(id);
    Optional<Begun> elsewhere = journal.underWay(id);
    return elsewhere.isPresent() ? elsewhere.get().attempt() : begin(id);
  }

  /** The attempt at an import that was begun here, if one was. */
  synchronized Optional<Attempt> begun(ImportId id) {
    return Optional.ofNullable(open.get(id)).map(Open::attempt);
  }

  private Attempt begin(ImportId id) {
    Attempt attempt = new Attempt(id, beginning.begin(id));
    open.put(id, new Open(attempt, new HashMap<>()));
    return attempt;
  }

  /** A chunk of an import is on the log. */
  synchronized void arrived(ImportId id, Contents.Place place, int events) {
    Open one = open.get(id);
    if (one != null) {
      Contents.Count before = one.counts().getOrDefault(place, Contents.Count.NONE);
      one.counts().put(place, before.plus(events));
    }
  }

  /** What an import has brought, if all of it was written here. */
  synchronized Optional<Contents> contents(ImportId id) {
    return Optional.ofNullable(open.get(id)).map(one -> new Contents(one.counts()));
  }

  synchronized void forget(ImportId id) {
    open.remove(id);
  }
}
