package withers.reconcile.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.corpus.Corpus;
import withers.corpus.Mix;
import withers.corpus.Pair;
import withers.fact.ChipEvent;
import withers.fact.ContactRole;
import withers.fact.Fact;
import withers.fact.Locator;
import withers.fact.Origin;
import withers.fact.Party;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.log.EventLog;
import withers.log.sqlite.SqliteEventLog;
import withers.matching.Matcher;
import withers.source.Extent;
import withers.workspace.Workspace;
import withers.world.Chips;
import withers.world.Export;
import withers.world.WorkspaceFolder;

/** The command on a real workspace whose animals' contacts are a corpus' pairs. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CalibrateCommandTest {
  private static final LocalDate DAY = LocalDate.of(2026, 9, 30);
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-10-01T08:00:00Z"), ZoneOffset.UTC);

  @TempDir Path folder;
  private WorkspaceFolder workspace;
  private CommandLineOf line;

  @BeforeEach
  void makeWorkspace() throws IOException {
    workspace = new WorkspaceFolder(folder);
    line = new CommandLineOf(folder, CLOCK);
  }

  @Test
  void the_file_that_it_writes_is_the_workspace_s_when_settings_name_it() throws IOException {
    imports(1_500);

    assertThat(calibrate("--output", "own.yaml")).as(line.err()).isZero();
    assertThat(line.out().lines()).first().asString().startsWith("round    1  log-likelihood -");
    assertThat(line.out().lines().toList())
        .endsWith(
            "Written: " + folder.toAbsolutePath().normalize().resolve("own.yaml"),
            "To use it, state \"matching: own.yaml\" in withers.yaml.");

    assertThat(matcher().parameters().version()).startsWith("built-in");
    Files.writeString(
        workspace.paths().settings(), "matching: own.yaml\n", StandardOpenOption.APPEND);
    assertThat(matcher().parameters().version()).isEqualTo("calibrated 2026-10-01");
  }

  private Matcher matcher() {
    return MatchingFile.matcher(Workspace.open(folder, CLOCK));
  }

  @Test
  void too_few_contacts_are_told_and_nothing_is_written() {
    imports(40);

    assertThat(calibrate()).isEqualTo(1);
    assertThat(line.err().lines())
        .contains(
            "Expected at least 1000 pairs that may be one person, but found 40: import more exports first",
            "Nothing was written.");
    assertThat(folder.resolve("matching.yaml")).doesNotExist();
  }

  @Test
  void a_workspace_without_imports_is_refused() {
    assertThat(calibrate()).isEqualTo(4);
  }

  private void imports(int animals) {
    List<Pair> pairs = new Corpus(Mix.EVERYDAY).pairs(animals).toList();
    try (EventLog log = SqliteEventLog.open(workspace.paths().eventLog());
        ContactVault vault = Workspace.open(folder, CLOCK).openVault()) {
      List<ChipEvent> visits = new ArrayList<>();
      List<ChipEvent> registrations = new ArrayList<>();
      for (int i = 0; i < animals; i++) {
        Party keeper = party(vault, pairs.get(i).one());
        Party registered = party(vault, pairs.get(i).other());
        visits.add(event("clinic", i, Slot.VISIT, new Fact.Attended(keeper)));
        registrations.add(event("north", i, Slot.REGISTRATION, registered(registered)));
      }
      export("clinic", visits).importInto(log, new UUID(1, 1), 500);
      export("north", registrations).importInto(log, new UUID(1, 2), 500);
      vault.store(pairs.stream().flatMap(CalibrateCommandTest::deposits).toList());
    }
  }

  private static java.util.stream.Stream<ContactVault.Deposit> deposits(Pair pair) {
    return java.util.stream.Stream.of(deposit(pair.one()), deposit(pair.other()));
  }

  private static ContactVault.Deposit deposit(Contact contact) {
    return new ContactVault.Deposit(contact, new SourceId("any"), new RecordKey("any"));
  }

  private static Party party(ContactVault vault, Contact contact) {
    ContactRef reference = vault.reference(contact);
    return new Party.Contact(reference, Optional.empty());
  }

  private static Fact registered(Party party) {
    return new Fact.Registered(Optional.empty(), Map.of(ContactRole.PRIMARY, party));
  }

  private static ChipEvent event(String source, int number, Slot slot, Fact fact) {
    Origin origin =
        new Origin(
            new SourceId(source), new RecordKey("r" + number), slot, DAY, new Locator(0, number));
    return new ChipEvent(new Subject.Chip(Chips.chip(number + 1)), origin, Optional.of(DAY), fact);
  }

  private static Export export(String source, List<ChipEvent> events) {
    return new Export(new SourceId(source), DAY, new Extent.Full(), Set.of(), Set.of(), events);
  }

  private int calibrate(String... options) {
    return line.run("calibrate", options);
  }
}
