package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.contact.ContactVault;
import withers.contact.VaultKey;
import withers.contact.VaultKeyFile;
import withers.contact.sqlite.SqliteContactVault;
import withers.reconcile.cli.RunStore;
import withers.report.Coast;
import withers.report.Samples;
import withers.workspace.OwnerOnly;
import withers.workspace.WorkspacePaths;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ReportCommandTest {
  @TempDir private Path folder;

  @BeforeEach
  void makes_a_workspace() throws IOException {
    Coast.writeWorkspace(folder);
  }

  @Test
  void tells_what_was_made_and_who_gets_no_mail() throws IOException {
    keepARun();

    CommandRun report = CommandRun.of("report", "--workspace", folder.toString());

    assertThat(report.out())
        .isEqualTo(
            """
            Run 2026-03-01-0123abcd, as of 2026-03-01: 8 follow-ups
              Dune Shelter: 1 (0 new, 1 still open), 0 settled: lists/2026-03-01-0123abcd/dune-shelter/list.html
              Harbour Vets: 7 (5 new, 2 still open), 1 settled: lists/2026-03-01-0123abcd/harbour-vets/list.html
            Overview: lists/2026-03-01-0123abcd/overview.html
            Mail: 2 ready in outbox/2026-03-01-0123abcd
            """);
    assertThat(report.err())
        .isEqualTo(
            "No mail for dune-shelter: it has no address that mail can be sent to. Give it a \"mail\""
                + " in organisations.yaml, or bring the list some other way.\n");
    assertThat(report.code()).isEqualTo(1);
    assertThat(folder.resolve("outbox/2026-03-01-0123abcd/harbour-vets.eml")).isNotEmptyFile();
    assertThat(folder.resolve("lists/2026-03-01-0123abcd/harbour-vets/list.html"))
        .content()
        .contains("Mara Linden");
  }

  @Test
  void tells_scripts_the_same_as_JSON() throws IOException {
    keepARun();

    CommandRun report =
        CommandRun.of(
            "report", "--workspace", folder.toString(), "--run", "2026-03-01-0123abcd", "--json");

    assertThat(report.out())
        .isEqualTo(
            """
            {
              "run" : "2026-03-01-0123abcd",
              "asOf" : "2026-03-01",
              "followUps" : 8,
              "lists" : "lists/2026-03-01-0123abcd",
              "overview" : "lists/2026-03-01-0123abcd/overview.json",
              "outbox" : "outbox/2026-03-01-0123abcd",
              "organisations" : [ {
                "organisation" : "dune-shelter",
                "followUps" : 1,
                "opened" : 0,
                "stillOpen" : 1,
                "settled" : 0,
                "settledByPeople" : 0,
                "waiting" : 0,
                "mail" : false
              }, {
                "organisation" : "harbour-vets",
                "followUps" : 7,
                "opened" : 5,
                "stillOpen" : 2,
                "settled" : 1,
                "settledByPeople" : 1,
                "waiting" : 0,
                "mail" : true
              } ]
            }
            """);
  }

  @Test
  void a_coordinator_without_an_address_means_no_mail_and_is_told() throws IOException {
    keepARun();
    Path organisations = folder.resolve("organisations.yaml");
    Files.writeString(
        organisations,
        Files.readString(organisations).replace(", mail: post@coast-network.example.org", ""));

    CommandRun report = CommandRun.of("report", "--workspace", folder.toString());

    assertThat(report.err())
        .isEqualTo(
            "Expected a mail address of the coordinator, coast-network, to write from, but found"
                + " none: no mail was made. Give it a \"mail\" in organisations.yaml.\n");
    assertThat(report.out()).contains("Mail: 0 ready in outbox/2026-03-01-0123abcd\n");
    assertThat(report.code()).isEqualTo(1);
    assertThat(folder.resolve("outbox/2026-03-01-0123abcd")).isEmptyDirectory();
  }

  @Test
  void before_the_first_run_there_is_nothing_to_report() {
    CommandRun report = CommandRun.of("report", "--workspace", folder.toString());

    assertThat(report)
        .isEqualTo(
            new CommandRun(
                4,
                "",
                "withers: Expected a run, but found none: make one first, with \"withers"
                    + " reconcile\"\n"));
  }

  @Test
  void a_run_that_is_not_there_is_refused() throws IOException {
    keepARun();

    for (String id : new String[] {"2026-02-01-00000000", "../lists"}) {
      assertThat(CommandRun.of("report", "--workspace", folder.toString(), "--run", id))
          .isEqualTo(
              new CommandRun(
                  4,
                  "",
                  "withers: Expected a run of this workspace, but found none called \"%s\": runs lists them\n"
                      .formatted(id)));
    }
  }

  @Test
  void a_vault_without_its_key_stops_the_report_whole() throws IOException {
    keepARun();
    Files.delete(folder.resolve("log/vault.key"));

    CommandRun report = CommandRun.of("report", "--workspace", folder.toString());

    assertThat(report)
        .isEqualTo(
            new CommandRun(
                6,
                "",
                "withers: Expected the vault key, but found no file; restore it from its backup: %s\n"
                    .formatted(folder.resolve("log/vault.key"))));
    assertThat(folder.resolve("lists")).isEmptyDirectory();
  }

  private void keepARun() throws IOException {
    WorkspacePaths paths = new WorkspacePaths(folder);
    OwnerOnly.folder(paths.log());
    VaultKey key = new VaultKey(1, new byte[VaultKey.LENGTH]);
    VaultKeyFile.create(paths.vaultKey(), key);
    try (ContactVault vault = SqliteContactVault.open(paths.contactVault(), key)) {
      new RunStore(paths.runs()).write(new Samples(new Coast(vault)).run());
    }
  }
}
