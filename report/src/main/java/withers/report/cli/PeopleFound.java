package withers.report.cli;

import java.nio.file.Files;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import withers.audit.AuditEvent;
import withers.auditing.AuditBook;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.id.ImportId;
import withers.log.EventLog;
import withers.matching.form.NormalForms;
import withers.reconcile.cli.MatchingFile;
import withers.report.privacy.Match;
import withers.report.privacy.Matches;
import withers.report.privacy.Mentions;
import withers.report.privacy.Request;
import withers.source.InputRefusedException;
import withers.workspace.Workspace;

/** Looks for a person in a workspace, and writes down who looked. */
record PeopleFound(Workspace workspace) {

  /**
   * Everything about whoever may be this person. Nothing is written.
   *
   * @throws InputRefusedException when nothing was imported yet
   */
  Request find(Contact wanted) {
    if (!Files.exists(workspace.paths().contactVault())) {
      throw new InputRefusedException(
          "Expected imports, but found none: nobody's details are held here");
    }
    Matches matches =
        new Matches(
            new NormalForms(workspace.settings().phoneRegion()), MatchingFile.matcher(workspace));
    try (ContactVault vault = workspace.openVault();
        EventLog log = workspace.openLog()) {
      List<Match> found = matches.find(wanted, vault);
      Set<ContactRef> references = found.stream().map(Match::reference).collect(Collectors.toSet());
      return new Request(
          wanted,
          found,
          references.isEmpty() ? List.of() : Mentions.read(log.snapshot(), references));
    }
  }

  /** Writes to the audit, unless it is about nobody. The caller holds no lock. */
  void write(String command, AuditEvent event) {
    if (event.references().isEmpty()) {
      return;
    }
    workspace.whileLocked(
        command,
        () -> {
          try (EventLog log = workspace.openLog()) {
            write(log, event);
            return event;
          }
        });
  }

  /** Writes to the audit, under the lock that the caller holds. */
  void write(EventLog log, AuditEvent event) {
    new AuditBook(log, workspace.clock(), () -> new ImportId(UUID.randomUUID())).write(event);
  }
}
