package withers.report.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import withers.auditing.AuditBook;
import withers.auditing.StandingErasures;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.WorkspaceOption;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.Erasures;
import withers.log.EventLog;
import withers.log.LogDamagedException;
import withers.reconcile.cli.RunStore;
import withers.report.backup.Examination;
import withers.workspace.Workspace;

/** Examines a workspace. */
@Command(
    name = "verify",
    mixinStandardHelpOptions = true,
    description = {
      "Reads everything that a workspace keeps for good and checks it: each page, chunk and contact by",
      "its checksum, the chains of imports, that each reference leads to a contact or to one that was",
      "forgotten, and that whoever was forgotten is not held again. Then what can be made again."
    },
    footerHeading = "%nExample:%n",
    footer = "  withers verify --workspace coast --repair")
public final class VerifyCommand implements Callable<Integer> {
  private final Console console;

  @Mixin private WorkspaceOption workspaceOption;

  @Option(
      names = "--repair",
      description = {
        "Throw away what is damaged and can be made again, and forget again whoever was forgotten.",
        "What is damaged in the log or the vault takes a backup."
      })
  private boolean repair;

  VerifyCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws IOException {
    Workspace workspace = workspaceOption.open();
    Examination.Found found = Examination.of(workspace);
    List<String> derived = derived(workspace);
    found.damages().forEach(console::say);
    if (!found.damages().isEmpty()) {
      console.say("The log or the vault is damaged: restore a backup into a new folder.");
      return ExitCode.STORAGE.number();
    }
    console.print(
        "Sound: %d events on the log, %d contacts in the vault."
            .formatted(found.events(), found.contacts()));
    return repaired(workspace, found.returned(), derived).number();
  }

  private ExitCode repaired(Workspace workspace, List<ContactRef> returned, List<String> derived)
      throws IOException {
    if (!returned.isEmpty()) {
      console.say(
          "Expected that %d contacts, which were forgotten, are kept out, but found that they are not%s."
              .formatted(returned.size(), repair ? ": they are forgotten again" : ""));
    }
    derived.forEach(one -> console.say("Damaged, and made again when it is needed: " + one + "."));
    if (returned.isEmpty() && derived.isEmpty()) {
      return ExitCode.DONE;
    }
    if (repair) {
      workspace.whileLocked("verify", () -> repair(workspace, derived));
    } else {
      console.say("\"withers verify --repair\" does so.");
    }
    return ExitCode.ATTENTION;
  }

  private static boolean repair(Workspace workspace, List<String> derived) throws IOException {
    try (EventLog log = workspace.openLog();
        ContactVault vault = workspace.openVault()) {
      Erasures erasures = StandingErasures.of(AuditBook.read(log.snapshot()));
      vault.forget(erasures.references(), erasures.records());
    }
    for (String file : derived) {
      Files.deleteIfExists(workspace.paths().root().resolve(file));
    }
    return true;
  }

  /** Files that are damaged and can be made again, by their place in the workspace. */
  private static List<String> derived(Workspace workspace) throws IOException {
    List<String> damaged = new ArrayList<>();
    for (String run : runs(workspace.paths().runs())) {
      if (!isReadable(run, workspace)) {
        damaged.add("runs/" + run + "/run.json");
      }
    }
    return damaged;
  }

  private static boolean isReadable(String run, Workspace workspace) {
    try {
      new RunStore(workspace.paths().runs()).read(run);
      return true;
    } catch (LogDamagedException | IllegalArgumentException damaged) {
      return false;
    }
  }

  private static List<String> runs(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(folder)) {
      return all.filter(Files::isDirectory)
          .map(run -> run.getFileName().toString())
          .sorted()
          .toList();
    }
  }
}
