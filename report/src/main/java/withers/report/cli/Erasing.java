package withers.report.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.audit.Erased;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.ContactVault.RecordName;
import withers.delivery.Delivery;
import withers.finding.RunResult;
import withers.id.OrganisationId;
import withers.ingest.profile.Profiles;
import withers.ingest.quarantine.QuarantineRemoval.Removed;
import withers.log.EventLog;
import withers.log.LogSnapshot;
import withers.mailing.Fate;
import withers.mailing.Mailings;
import withers.reconcile.cli.RunStore;
import withers.report.privacy.Copies;
import withers.report.privacy.LogTexts;
import withers.report.privacy.Request;
import withers.workspace.Workspace;

/**
 * Forgets people and deletes the copies of their details.
 *
 * @param by in which role somebody does it
 * @param withInbox whether exports that hold the person are deleted, once they are on the log
 */
record Erasing(Workspace workspace, String by, String reason, boolean withInbox) {

  /**
   * What was done, and what is left to do.
   *
   * @param contacts how many contacts were forgotten
   * @param records how many records are kept out
   * @param lists files of lists and mails that were deleted
   * @param backups that were taken before a newer format, and deleted
   * @param anew the run whose lists were made again
   * @param deleted exports that were deleted
   * @param exports exports in the inbox that still hold the person
   * @param left other files that do
   * @param onLog records whose words on the log do
   * @param mails lists that went out by mail to those who may have been told
   */
  record Done(
      int contacts,
      int records,
      List<Removed> quarantined,
      int lists,
      int backups,
      Optional<String> anew,
      List<Path> deleted,
      List<Path> exports,
      List<Path> left,
      Set<String> onLog,
      List<Delivery> mails) {
    Done {
      quarantined = List.copyOf(quarantined);
      deleted = List.copyOf(deleted);
      exports = List.copyOf(exports);
      left = List.copyOf(left);
      onLog = Set.copyOf(onLog);
      mails = List.copyOf(mails);
    }

    boolean needsAttention() {
      return !exports.isEmpty() || !left.isEmpty() || !onLog.isEmpty();
    }
  }

  /** Whether no file that can be cleared holds the person either. */
  boolean isNothingLeft(Request request) {
    Copies copies = copies(request);
    return copies.quarantined().isEmpty() && copies.exports().isEmpty() && copies.left().isEmpty();
  }

  private Copies copies(Request request) {
    Profiles profiles = Profiles.read(workspace.paths().sources(), workspace.directory());
    return new Copies(workspace.paths(), profiles, request.traces());
  }

  /**
   * Does it all, holding the workspace's lock. Copies go before the vault's entry: while that
   * stands, a command that was ended on the way can be given again. The entry in the audit is
   * written before anything is forgotten: better an erasure that is told twice than one that nobody
   * knows of.
   */
  Done erase(Request request) {
    Copies copies = copies(request);
    return workspace.whileLocked("forget", () -> steps(request, copies));
  }

  private Done steps(Request request, Copies copies) {
    List<Removed> quarantined = copies.quarantined();
    Set<RecordName> records = new LinkedHashSet<>(request.records());
    quarantined.forEach(one -> records.addAll(one.records()));
    try (EventLog log = workspace.openLog()) {
      LogSnapshot snapshot = log.snapshot();
      Set<OrganisationId> tellers = request.tellers(snapshot);
      copies.remove(quarantined);
      boolean isPublished = latest().filter(this::isPublished).isPresent();
      int lists = copies.deleteLists(tellers);
      List<Path> deleted = withInbox ? deleteTaken(copies) : List.of();
      int backups = copies.deleteBackups();
      forget(request, records, log);
      Optional<String> anew = isPublished ? publish() : Optional.empty();
      return new Done(
          request.matches().size(),
          records.size(),
          quarantined,
          lists,
          backups,
          anew,
          deleted,
          copies.exports(),
          copies.left(),
          LogTexts.in(snapshot, request.traces()),
          mails(snapshot, tellers));
    }
  }

  private void forget(Request request, Set<RecordName> records, EventLog log) {
    List<ContactRef> references = request.references().stream().sorted().toList();
    if (references.isEmpty() && records.isEmpty()) {
      return;
    }
    new PeopleFound(workspace)
        .write(
            log, new Erased(workspace.today(), by, reason, references, new ArrayList<>(records)));
    try (ContactVault vault = workspace.openVault()) {
      vault.forget(references, records);
    }
  }

  private static List<Path> deleteTaken(Copies copies) {
    List<Path> taken = copies.exports().stream().filter(copies::isTaken).toList();
    taken.forEach(Copies::delete);
    return taken;
  }

  private Optional<RunResult> latest() {
    return new RunStore(workspace.paths().runs()).latest();
  }

  private boolean isPublished(RunResult run) {
    return Files.exists(workspace.paths().lists().resolve(run.id()));
  }

  private Optional<String> publish() {
    Optional<RunResult> latest = latest();
    latest.ifPresent(new Reporter(workspace)::publish);
    return latest.map(RunResult::id);
  }

  private static List<Delivery> mails(LogSnapshot log, Set<OrganisationId> tellers) {
    Mailings mailings = Mailings.read(log);
    return mailings.all().stream()
        .filter(one -> tellers.contains(one.recipient()))
        .filter(one -> mailings.fate(one.run(), one.recipient()) != Fate.UNSENT)
        .toList();
  }
}
