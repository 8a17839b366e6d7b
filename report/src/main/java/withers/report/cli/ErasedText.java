package withers.report.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.cli.Console;
import withers.delivery.Delivery;
import withers.ingest.quarantine.QuarantineRemoval.Removed;
import withers.workspace.Workspace;

/** Tells what was forgotten, what still holds it, and where copies may be that nobody here sees. */
record ErasedText(Console console, Workspace workspace) {

  void tell(Erasing.Done done) {
    console.print(
        "Forgotten: %d contacts; %d records that name them are kept out of what comes."
            .formatted(done.contacts(), done.records()));
    done.quarantined().forEach(this::quarantined);
    if (done.lists() > 0) {
      console.print("Deleted: %d files of lists and mails.".formatted(done.lists()));
    }
    if (done.backups() > 0) {
      console.print(
          "Deleted: %d backups that were taken before a newer format.".formatted(done.backups()));
    }
    done.anew()
        .ifPresent(run -> console.print("Made again, without them: the lists of run " + run + "."));
    paths("Deleted from the inbox, as all it said is on the log", done.deleted());
    left(done);
    elsewhere(done.mails());
  }

  private void quarantined(Removed removed) {
    console.print(
        "Taken out of quarantine: %d rows (%s)."
            .formatted(removed.rows(), workspace.paths().shown(removed.file())));
  }

  private void left(Erasing.Done done) {
    paths(
        "Still held in exports in the inbox (--inbox deletes those that are on the log)",
        done.exports());
    paths("Still held in files that only you can change", done.left());
    if (!done.onLog().isEmpty()) {
      console.print(
          "Still held in words on the log, which is never rewritten, of records %s."
              .formatted(sorted(done.onLog())));
    }
  }

  private static String sorted(Set<String> records) {
    return records.stream().sorted().collect(Collectors.joining(", "));
  }

  private void paths(String what, List<Path> files) {
    if (!files.isEmpty()) {
      console.print(what + ":");
      files.forEach(file -> console.print("  " + workspace.paths().shown(file)));
    }
  }

  private void elsewhere(List<Delivery> mails) {
    console.print("Out of reach of this command, ask for it yourself:");
    Stream.of(
            "the records of the organisations that told of them, and their sheets of lists",
            "backups of this workspace: after a restore, \"withers restore\" forgets again")
        .forEach(line -> console.print("  " + line));
    mails.forEach(
        mail ->
            console.print(
                "  the mail to %s of %s, if its list named them"
                    .formatted(mail.recipient(), mail.on())));
  }
}
