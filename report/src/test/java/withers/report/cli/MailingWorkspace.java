package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import withers.cases.CaseKey;
import withers.contact.ContactVault;
import withers.contact.VaultKey;
import withers.contact.VaultKeyFile;
import withers.contact.sqlite.SqliteContactVault;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.RunResult;
import withers.reconcile.cli.RunStore;
import withers.report.Coast;
import withers.report.FindingStory;
import withers.report.Samples;
import withers.workspace.OwnerOnly;
import withers.workspace.WorkspacePaths;

/**
 * A workspace with a run, two organisations that mail can be sent to, and a server on this machine.
 */
record MailingWorkspace(Path folder) {

  static MailingWorkspace in(Path folder, int port) throws IOException {
    Coast.writeWorkspace(folder);
    MailingWorkspace workspace = new MailingWorkspace(folder);
    workspace.edit(
        "organisations.yaml",
        "'+1 212 555 0120']}",
        "'+1 212 555 0120'], mail: post@dune-shelter.example.org}");
    workspace.setMail("overview: kept\n  " + server(port));
    WorkspacePaths paths = new WorkspacePaths(folder);
    OwnerOnly.folder(paths.log());
    VaultKeyFile.create(paths.vaultKey(), new VaultKey(1, new byte[VaultKey.LENGTH]));
    workspace.keep(workspace.sample());
    return workspace;
  }

  /** What is to be known of mail where a server listens on this machine. */
  static String server(int port) {
    return "server: {host: localhost, port: %d, security: none}".formatted(port);
  }

  /** The sample run, its people in the vault of this workspace. */
  RunResult sample() {
    WorkspacePaths paths = new WorkspacePaths(folder);
    try (ContactVault vault =
        SqliteContactVault.open(paths.contactVault(), VaultKeyFile.load(paths.vaultKey()))) {
      return new Samples(new Coast(vault)).run();
    }
  }

  /**
   * A run some days after this one: one of the clinic's follow-ups is settled, and another is new.
   */
  static RunResult next(RunResult run, int days) {
    List<Finding> findings = new ArrayList<>(run.findings());
    Finding settled = findings.remove(5);
    Finding listed = FindingStory.of(FindingKind.UNREGISTERED, Coast.CLINIC, 1700).finding();
    findings.add(listed);
    List<CaseKey> open = new ArrayList<>(run.opened());
    open.addAll(run.stillOpen());
    open.remove(settled.caseKey());
    LocalDate asOf = run.asOf().plusDays(days);
    return new RunResult(
        asOf + "-4567cdef",
        asOf,
        run.knownBy(),
        run.animals(),
        findings,
        run.notJudged(),
        run.questions(),
        List.of(listed.caseKey()),
        open,
        List.of(settled.caseKey()),
        run.backlogs(),
        run.aside(),
        run.settled(),
        List.of());
  }

  void keep(RunResult run) throws IOException {
    new RunStore(new WorkspacePaths(folder).runs()).write(run);
  }

  /** States what is to be known of mail. */
  void setMail(String mail) throws IOException {
    Path file = folder.resolve("withers.yaml");
    String before = Files.readString(file).replaceAll("(?s)mail:.*", "");
    Files.writeString(file, before + "mail:\n  " + mail + "\n");
  }

  private void edit(String name, String from, String to) throws IOException {
    Path file = folder.resolve(name);
    assertThat(Files.readString(file)).contains(from);
    Files.writeString(file, Files.readString(file).replace(from, to));
  }

  /** A command line on this workspace. */
  String[] command(String name, String... more) {
    return Stream.concat(Stream.of(name, "--workspace", folder.toString()), Stream.of(more))
        .toArray(String[]::new);
  }
}
