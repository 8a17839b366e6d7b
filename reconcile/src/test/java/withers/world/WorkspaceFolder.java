package withers.world;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.chip.NumberRange;
import withers.contact.Contact;
import withers.contact.ContactVault;
import withers.contact.VaultKeyFile;
import withers.contact.sqlite.SqliteContactVault;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.log.EventLog;
import withers.log.sqlite.SqliteEventLog;
import withers.organisation.Organisation;
import withers.workspace.WorkspacePaths;

/** A real workspace's folder, with a world's exports on its log. */
public final class WorkspaceFolder {
  private final WorkspacePaths paths;

  /** Makes a workspace of the cast, without imports. */
  public WorkspaceFolder(Path folder) throws IOException {
    this.paths = new WorkspacePaths(folder);
    Files.createDirectories(paths.log());
    Files.writeString(
        paths.settings(),
        """
        network: The Cast
        zone: UTC
        phone-region: US
        language: en
        coordinator: desk
        grace-days: 30
        handover-window-days: 3
        test-numbers: accepted
        """);
    Files.writeString(
        paths.organisations(),
        Cast.DIRECTORY.all().stream()
            .map(WorkspaceFolder::organisation)
            .collect(Collectors.joining("\n", "organisations:\n", "\n")));
    VaultKeyFile.create(paths.vaultKey(), World.KEY);
  }

  public WorkspacePaths paths() {
    return paths;
  }

  /** Imports a world's exports, and everybody of the cast. */
  public void imports(World world) {
    try (EventLog log = SqliteEventLog.open(paths.eventLog());
        ContactVault vault = SqliteContactVault.open(paths.contactVault(), World.KEY)) {
      vault.store(Cast.PEOPLE.values().stream().map(WorkspaceFolder::deposit).toList());
      long number = log.snapshot().markers().size();
      for (Export export : world.exports()) {
        export.importInto(log, new UUID(2, ++number), 100);
      }
    }
  }

  private static ContactVault.Deposit deposit(Contact contact) {
    return new ContactVault.Deposit(contact, new SourceId("any"), new RecordKey("any"));
  }

  private static String organisation(Organisation one) {
    Stream<String> lines =
        Stream.of(
            "  - id: " + one.id(),
            "    name: " + one.name(),
            "    kind: " + one.kind().name().toLowerCase(java.util.Locale.ROOT),
            "    phones: " + quoted(one.contact().phones()));
    List<String> ranges = one.registers().stream().map(WorkspaceFolder::range).toList();
    Stream<String> registers =
        ranges.isEmpty() ? Stream.of() : Stream.of("    registers: " + ranges);
    return Stream.concat(lines, registers).collect(Collectors.joining("\n"));
  }

  private static List<String> quoted(List<String> texts) {
    return texts.stream().map(text -> "'" + text + "'").toList();
  }

  private static String range(NumberRange range) {
    return range.first() + "-" + range.last();
  }
}
