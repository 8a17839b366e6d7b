package withers.report.backup;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import withers.auditing.AuditBook;
import withers.auditing.StandingErasures;
import withers.codec.Streams;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.Erasures;
import withers.contact.VaultDamagedException;
import withers.custody.Parties;
import withers.fact.ChipEvent;
import withers.fact.Party;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogDamagedException;
import withers.log.LogSnapshot;
import withers.log.LogStream;
import withers.sqlite.SqliteCopy;
import withers.workspace.Workspace;

/**
 * Examines all that a workspace keeps for good: every page, chunk and contact by its checksum,
 * every chain of markers, every reference, and every erasure. Goes on after a problem.
 */
public final class Examination {

  /** References looked up together. */
  private static final int TOGETHER = 10_000;

  private final Workspace workspace;
  private final List<String> damages = new ArrayList<>();
  private final Set<ContactRef> returned = new TreeSet<>();
  private long events;

  private Examination(Workspace workspace) {
    this.workspace = workspace;
  }

  /**
   * What was found.
   *
   * @param events how many events were read
   * @param contacts how many contacts were
   * @param damages what is wrong with log and vault, a sentence each
   * @param returned contacts that were forgotten, by the audit, and are held again or could be
   */
  public record Found(long events, long contacts, List<String> damages, List<ContactRef> returned) {
    public Found {
      damages = List.copyOf(damages);
      returned = List.copyOf(returned);
    }
  }

  /** Examines a workspace; nothing is changed. */
  public static Found of(Workspace workspace) {
    return new Examination(workspace).found();
  }

  private Found found() {
    long contacts = 0;
    for (var file : List.of(workspace.paths().eventLog(), workspace.paths().contactVault())) {
      if (Files.exists(file)) {
        SqliteCopy.problems(file)
            .forEach(one -> damages.add("%s: %s".formatted(workspace.paths().shown(file), one)));
      }
    }
    if (damages.isEmpty() && Files.exists(workspace.paths().contactVault())) {
      // The log first: what it refers to was in the vault before.
      try (EventLog log = workspace.openLog();
          ContactVault vault = workspace.openVault()) {
        Set<ContactRef> named = new HashSet<>();
        snapshot(log).ifPresent(snapshot -> read(snapshot, named, vault));
        contacts = contacts(vault);
        requireKept(named, vault);
      } catch (LogDamagedException | VaultDamagedException damaged) {
        damages.add(String.valueOf(damaged.getMessage()));
      }
    }
    return new Found(events, contacts, damages, List.copyOf(returned));
  }

  private Optional<LogSnapshot> snapshot(EventLog log) {
    try {
      return Optional.of(log.snapshot());
    } catch (LogDamagedException damaged) {
      damages.add(String.valueOf(damaged.getMessage()));
      return Optional.empty();
    }
  }

  private void read(LogSnapshot log, Set<ContactRef> named, ContactVault vault) {
    for (LogStream<?> stream : Streams.all()) {
      for (int partition = 0; partition < stream.partitions(); partition++) {
        read(log, stream, partition, named);
      }
    }
    chains(log.markers());
    erased(log, vault.erasures(), vault);
  }

  private <E> void read(
      LogSnapshot log, LogStream<E> stream, int partition, Set<ContactRef> named) {
    try {
      log.replay(
          stream,
          partition,
          (event, marker) -> {
            events++;
            if (event instanceof ChipEvent told) {
              Parties.of(told.fact())
                  .filter(Party.Contact.class::isInstance)
                  .forEach(party -> named.add(((Party.Contact) party).reference()));
            }
          });
    } catch (LogDamagedException damaged) {
      damages.add(String.valueOf(damaged.getMessage()));
    }
  }

  /** Each marker but a chain's first continues one that is there, and no two continue the same. */
  private void chains(List<ImportMarker> markers) {
    Map<SourceId, List<ImportMarker>> chains =
        markers.stream().collect(Collectors.groupingBy(ImportMarker::chain));
    chains.forEach(
        (chain, all) -> {
          Set<ImportId> ids = all.stream().map(ImportMarker::id).collect(Collectors.toSet());
          Map<Optional<ImportId>, ImportMarker> continued = new HashMap<>();
          for (ImportMarker marker : all) {
            boolean isTorn = marker.parent().filter(parent -> !ids.contains(parent)).isPresent();
            if (isTorn || continued.put(marker.parent(), marker) != null) {
              damages.add(
                  "Expected the imports of %s to be one chain, but found one that continues none or a second one (import %s)"
                      .formatted(chain, marker.id().value()));
            }
          }
        });
  }

  private void erased(LogSnapshot log, Erasures kept, ContactVault vault) {
    Set<ContactRef> erased = StandingErasures.of(AuditBook.read(log)).references();
    returned.addAll(vault.stored(erased));
    erased.stream().filter(one -> !kept.references().contains(one)).forEach(returned::add);
  }

  private long contacts(ContactVault vault) {
    long[] count = {0};
    try {
      vault.visit((reference, contact) -> count[0]++);
    } catch (VaultDamagedException damaged) {
      damages.add(String.valueOf(damaged.getMessage()));
    }
    return count[0];
  }

  private void requireKept(Set<ContactRef> named, ContactVault vault) {
    List<ContactRef> all = List.copyOf(named);
    long lost = 0;
    for (int from = 0; from < all.size(); from += TOGETHER) {
      List<ContactRef> some = all.subList(from, Math.min(all.size(), from + TOGETHER));
      Set<ContactRef> stored = vault.stored(some);
      lost += some.stream().filter(one -> !stored.contains(one) && !vault.isForgotten(one)).count();
    }
    if (lost > 0) {
      damages.add(
          "Expected the vault to hold the contacts that the log refers to, but found %d missing"
              .formatted(lost));
    }
  }
}
