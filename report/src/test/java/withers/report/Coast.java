package withers.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.chip.ChipNumber;
import withers.contact.Contact;
import withers.contact.ContactVault;
import withers.contact.MemoryContactVault;
import withers.contact.VaultKey;
import withers.finding.RunResult;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.log.ImportMarker;
import withers.organisation.Directory;
import withers.organisation.Organisation;
import withers.organisation.OrganisationKind;
import withers.report.overview.Background;
import withers.report.overview.RunFigures;
import withers.report.overview.Unnumbered;

/** An invented network on a coast, for tests: organisations, people and a vault that holds them. */
public final class Coast {

  public static final OrganisationId CLINIC = new OrganisationId("harbour-vets");
  public static final OrganisationId SHELTER = new OrganisationId("dune-shelter");
  public static final OrganisationId TIDELINE = new OrganisationId("tideline");
  public static final OrganisationId BEACON = new OrganisationId("beacon");
  public static final OrganisationId COORDINATOR = new OrganisationId("coast-network");

  public static final LocalDate TODAY = LocalDate.of(2026, 3, 1);

  public final ContactVault vault;

  /** With a vault in memory. */
  public Coast() {
    this(new MemoryContactVault(new VaultKey(1, new byte[32])));
  }

  public Coast(ContactVault vault) {
    this.vault = vault;
  }

  public static final Directory DIRECTORY =
      Directory.of(
          List.of(
              organisation(CLINIC, "Harbour Vets", OrganisationKind.CLINIC, "+1 212 555 0110"),
              organisation(SHELTER, "Dune Shelter", OrganisationKind.SHELTER, "+1 212 555 0120"),
              organisation(TIDELINE, "Tideline", OrganisationKind.REGISTRY, "+1 212 555 0130"),
              organisation(BEACON, "Beacon", OrganisationKind.REGISTRY, "+1 212 555 0140"),
              organisation(
                  COORDINATOR, "Coast Network", OrganisationKind.COORDINATOR, "+1 212 555 0100")));

  private static Organisation organisation(
      OrganisationId id, String name, OrganisationKind kind, String phone) {
    return new Organisation(
        id,
        name,
        kind,
        List.of(),
        contact(name, phone),
        Optional.of("post@" + id.value() + ".example.org"),
        List.of(),
        Set.of(),
        List.of());
  }

  /** A contact with a name and phones. */
  public static Contact contact(String name, String... phones) {
    return new Contact(name, "", "", List.of(phones), List.of(), List.of(), "", "", "", "");
  }

  /** A person whose details the vault holds, stated by that organisation's source. */
  public Who.Person person(OrganisationId suppliedBy, Contact contact) {
    SourceId source = new SourceId(suppliedBy.value());
    vault.store(List.of(new ContactVault.Deposit(contact, source, new RecordKey("C-1"))));
    return new Who.Person(vault.reference(contact), source, suppliedBy);
  }

  /** A chip number under the test code. */
  public static ChipNumber chip(int number) {
    return ChipNumber.iso(999, number);
  }

  /** A run of these findings, all of them new. */
  public static RunResult run(FindingStory... stories) {
    var findings = new ArrayList<>(List.of(stories).stream().map(FindingStory::finding).toList());
    return new RunResult(
        "2026-03-01-0123abcd",
        TODAY,
        Optional.empty(),
        2993,
        findings,
        List.of(),
        List.of(),
        findings.stream().map(finding -> finding.caseKey()).toList(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  /** What an overview of this network tells beside its run. */
  public static Background background(List<ImportMarker> markers, List<RunFigures> earlier) {
    return new Background("Coast Network", DIRECTORY, markers, Unnumbered.NONE, earlier);
  }

  /** Writes the configuration of a workspace of this network; the shelter has no mail address. */
  public static void writeWorkspace(Path folder) throws IOException {
    Files.writeString(
        folder.resolve("withers.yaml"),
        """
        network: Coast Network
        settle-seconds: 0
        zone: UTC
        phone-region: US
        language: en-GB
        coordinator: coast-network
        test-numbers: accepted
        """);
    Files.writeString(
        folder.resolve("organisations.yaml"),
        """
        organisations:
          - {id: harbour-vets, name: Harbour Vets, kind: clinic, phones: ['+1 212 555 0110'], mail: post@harbour-vets.example.org}
          - {id: dune-shelter, name: Dune Shelter, kind: shelter, phones: ['+1 212 555 0120']}
          - {id: tideline, name: Tideline, kind: registry, phones: ['+1 212 555 0130'], mail: post@tideline.example.org}
          - {id: beacon, name: Beacon, kind: registry, phones: ['+1 212 555 0140'], mail: post@beacon.example.org}
          - {id: coast-network, name: Coast Network, kind: coordinator, mail: post@coast-network.example.org}
        """);
  }

  /** Writes the profile of the clinic's patients, whose files are {@code patients-DAY.csv}. */
  public static void writePatients(Path folder) throws IOException {
    write(
        folder,
        "sources/patients.yaml",
        """
        organisation: harbour-vets
        kind: clinic-patients
        files: [patients-*.csv]
        export-date: {from: file-name}
        extent: full
        coverage: {reach: whole}
        key: [No]
        columns:
          chip: Chip
          visit: Seen
          client: {name: Client, phones: [Phone]}
        """);
  }

  /** Writes the profile of the registry's contacts, whose files are {@code register-DAY.csv}. */
  public static void writeRegister(Path folder) throws IOException {
    write(
        folder,
        "sources/register.yaml",
        """
        organisation: tideline
        kind: registry-contacts
        files: [register-*.csv]
        export-date: {from: file-name}
        extent: full
        coverage: {reach: whole}
        key: [No]
        columns:
          chip: Chip
          updated: Since
          primary: {name: Contact, phones: [Phone]}
        """);
  }

  /** Writes a file of a workspace, in a folder that is made if it is missing. */
  public static void write(Path folder, String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }
}
