package withers.report.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.audit.Erased;
import withers.audit.Readmitted;
import withers.auditing.AuditBook;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.ContactVault.RecordName;
import withers.contact.Erasures;
import withers.log.EventLog;
import withers.workspace.FolderTree;
import withers.workspace.Workspace;

/**
 * Ends that people who were forgotten are kept out. What they are kept out by is told apart from
 * what may be missing: until their records were read again, nobody makes anything of the gap.
 *
 * @param by in which role somebody does it
 */
record Readmission(Workspace workspace, String by, String reason) {

  /** Erasures by which somebody is kept out, the oldest first. */
  List<Erased> standing() {
    try (EventLog log = workspace.openLog();
        ContactVault vault = workspace.openVault()) {
      return standing(log, vault.erasures());
    }
  }

  private static List<Erased> standing(EventLog log, Erasures kept) {
    return AuditBook.read(log.snapshot()).stream()
        .filter(Erased.class::isInstance)
        .map(Erased.class::cast)
        .filter(one -> isKept(one, kept))
        .toList();
  }

  /** A record may be kept out for somebody else, too. */
  private static boolean isKept(Erased one, Erasures kept) {
    return one.references().isEmpty()
        ? one.records().stream().anyMatch(kept.records()::contains)
        : one.references().stream().anyMatch(kept.references()::contains);
  }

  /**
   * Does it, holding the workspace's lock. The audit comes first, as before an erasure. What
   * recognises records as unchanged goes before the vault lets them in: a command that was ended on
   * the way can be given again, and the next exports are read whole.
   *
   * @param chosen of those that stand
   * @return what is no longer kept out
   */
  Readmitted readmit(Collection<Erased> chosen) {
    return workspace.whileLocked("readmit", () -> steps(chosen));
  }

  private Readmitted steps(Collection<Erased> chosen) {
    try (EventLog log = workspace.openLog();
        ContactVault vault = workspace.openVault()) {
      List<Erased> others = new ArrayList<>(standing(log, vault.erasures()));
      others.removeAll(chosen);
      Readmitted readmitted =
          new Readmitted(
              workspace.today(), by, reason, references(chosen), records(chosen, others));
      new PeopleFound(workspace).write(log, readmitted);
      forgetWhatIsUnchanged();
      vault.readmit(readmitted.references(), readmitted.records());
      return readmitted;
    }
  }

  private static List<ContactRef> references(Collection<Erased> chosen) {
    return chosen.stream().flatMap(one -> one.references().stream()).distinct().sorted().toList();
  }

  /** But for those by which somebody else is kept out. */
  private static List<RecordName> records(Collection<Erased> chosen, List<Erased> others) {
    Set<RecordName> theirs =
        others.stream().flatMap(one -> one.records().stream()).collect(Collectors.toSet());
    Set<RecordName> records = new HashSet<>();
    chosen.forEach(one -> records.addAll(one.records()));
    records.removeAll(theirs);
    return records.stream()
        .sorted(
            java.util.Comparator.comparing((RecordName one) -> one.source().value())
                .thenComparing(one -> one.key().value()))
        .toList();
  }

  private void forgetWhatIsUnchanged() {
    Path cache = workspace.paths().cache();
    try (Stream<Path> sources = Files.isDirectory(cache) ? Files.list(cache) : Stream.of()) {
      for (Path source : sources.filter(Files::isDirectory).toList()) {
        FolderTree.delete(source);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
