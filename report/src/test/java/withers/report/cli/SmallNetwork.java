package withers.report.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.codec.finding.CanonicalFindings;
import withers.reconcile.cli.RunStore;
import withers.report.Coast;

/**
 * A clinic, a shelter and two registries, all of them invented, with what each has in its records
 * just now. Their exports are whole: each month every row is there again.
 */
record SmallNetwork(Path folder, Map<Export, TreeMap<String, String>> rows) {

  /** Who exports what. */
  enum Export {
    PATIENTS("No,Chip,Second,Seen,Died,Client,Phone"),
    STAYS("No,Chip,In,From,FromPhone,Out,To,Phone"),
    TIDELINE("No,Chip,Since,Contact,Phone"),
    BEACON("No,Chip,Since,Contact,Phone");

    private final String header;

    Export(String header) {
      this.header = header;
    }

    private String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /** A workspace that sends mail through a server on this machine. */
  static SmallNetwork in(Path folder, int port) throws IOException {
    Coast.write(folder, "withers.yaml", SETTINGS.formatted(port));
    Coast.write(folder, "organisations.yaml", ORGANISATIONS);
    Coast.write(folder, "sources/patients.yaml", PATIENTS);
    Coast.write(folder, "sources/stays.yaml", STAYS);
    Coast.write(folder, "sources/tideline.yaml", REGISTER.formatted("tideline", "tideline"));
    Coast.write(folder, "sources/beacon.yaml", REGISTER.formatted("beacon", "beacon"));
    return of(folder);
  }

  /** Of a workspace that is there already, with nothing in its records yet. */
  static SmallNetwork of(Path folder) {
    return new SmallNetwork(folder, new EnumMap<>(Export.class));
  }

  /** From now on an organisation's records have these rows, in place of those of the same keys. */
  void state(Export export, String text) {
    text.lines()
        .map(line -> line.replaceAll(" +", " ").replaceAll(" ?, ?", ",").strip())
        .forEach(
            line ->
                rows.computeIfAbsent(export, none -> new TreeMap<>())
                    .put(line.substring(0, line.indexOf(',')), line));
  }

  /** An animal goes from Bo Brandt by way of the shelter to Ada Stone; a registry has the first. */
  void rehomes() {
    state(
        Export.STAYS,
        "S1, 999010000000101, 2026-03-01, Bo Brandt, 212 555 0102, 2026-04-01, Ada Stone, 212 555 0101");
    state(Export.TIDELINE, "T1, 999010000000101, 2020-05-01, Bo Brandt, 212 555 0102");
  }

  /** The clinic sees that animal with Ada Stone. */
  void visits() {
    state(Export.PATIENTS, "P1, 999010000000101, , 2026-05-01, , Ada Stone, 212 555 0101");
  }

  /** Registrations of two clients' animals name others, and an adopter has none. */
  void fallsBehind() {
    state(
        Export.PATIENTS,
        """
        P-1, 999000000001001, , 2025-06-01, , Mara Linden, +1 212 555 0151
        P-2, 999000000001002, , 2025-06-02, , Pia Lorne,   +1 212 555 0152
        """);
    state(
        Export.STAYS,
        "S-1, 999000000001011, 2025-09-20, , , 2025-10-20, Otto Hale, +1 212 555 0161");
    state(
        Export.TIDELINE,
        """
        T-1, 999000000001001, 2022-05-01, Jonas Abel,  +1 212 555 0171
        T-2, 999000000001002, 2022-05-02, Emil Varga,  +1 212 555 0172
        """);
  }

  /** All exports of a day come in. */
  void export(LocalDate day) throws IOException {
    for (Map.Entry<Export, TreeMap<String, String>> one : rows.entrySet()) {
      Export export = one.getKey();
      String lines = String.join("\n", one.getValue().values());
      Coast.write(
          folder,
          "inbox/%s-%s.csv".formatted(export.word(), day),
          export.header + "\n" + lines + "\n");
    }
  }

  /** Runs a command on the workspace. */
  CommandRun run(LocalDate day, String command, String... more) {
    return CommandRun.on(
        day,
        Stream.concat(Stream.of(command, "--workspace", folder.toString()), Stream.of(more))
            .toArray(String[]::new));
  }

  /**
   * Has whoever such details lead to forgotten.
   *
   * @return the references of their contacts, as command lines name them
   */
  String forget(LocalDate day, String name, String phone) throws IOException {
    Path person = Files.createTempFile("person", ".yaml");
    Files.writeString(person, "name: %s\nphones: '%s'\n".formatted(name, phone));
    try {
      String[] said = {
        "--person", person.toString(), "--by", "coordinator", "--reason", "asked by letter"
      };
      String references =
          REFERENCE
              .matcher(run(day, "forget", said).out())
              .results()
              .map(MatchResult::group)
              .distinct()
              .collect(Collectors.joining(","));
      run(
          day,
          "forget",
          Stream.concat(Stream.of(said), Stream.of("--yes", references)).toArray(String[]::new));
      return references;
    } finally {
      Files.delete(person);
    }
  }

  /** What the latest run found, as findings are compared. */
  String findings() {
    return CanonicalFindings.of(
            new RunStore(folder.resolve("runs")).latest().orElseThrow().findings())
        .text();
  }

  private static final Pattern REFERENCE = Pattern.compile("[0-9a-f]{2}:[0-9a-f]{32}");

  private static final String SETTINGS =
      """
      network: Coast Network
      settle-seconds: 0
      zone: UTC
      phone-region: US
      language: en-GB
      coordinator: coast-network
      test-numbers: accepted
      list-cap: 4
      mail:
        reminder-days: 45
        overview: kept
        server: {host: localhost, port: %d, security: none}
      """;

  private static final String ORGANISATIONS =
      """
      organisations:
        - {id: harbour-vets, name: Harbour Vets, kind: clinic, phones: ['+1 212 555 0110'], mail: post@harbour-vets.example.org}
        - {id: dune-shelter, name: Dune Shelter, kind: shelter, phones: ['+1 212 555 0120'], mail: post@dune-shelter.example.org}
        - {id: tideline, name: Tideline, kind: registry, phones: ['+1 212 555 0130'], mail: post@tideline.example.org}
        - {id: beacon, name: Beacon, kind: registry, phones: ['+1 212 555 0140'], mail: post@beacon.example.org}
        - {id: coast-network, name: Coast Network, kind: coordinator, mail: post@coast-network.example.org}
      """;

  private static final String PATIENTS =
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
        second-chip: Second
        visit: Seen
        died: Died
        client: {name: Client, phones: [Phone]}
      """;

  private static final String STAYS =
      """
      organisation: dune-shelter
      kind: shelter-movements
      files: [stays-*.csv]
      export-date: {from: file-name}
      extent: full
      coverage: {reach: whole}
      key: [No]
      columns:
        chip: Chip
        intake: In
        intake-from: {name: From, phones: [FromPhone]}
        outcome: Out
        outcome-to: {name: To, phones: [Phone]}
      fixed:
        intake-type: intake-surrender
        outcome-type: adoption
      """;

  private static final String REGISTER =
      """
      organisation: %s
      kind: registry-contacts
      files: [%s-*.csv]
      export-date: {from: file-name}
      extent: full
      coverage: {reach: whole}
      key: [No]
      columns:
        chip: Chip
        updated: Since
        primary: {name: Contact, phones: [Phone]}
      """;
}
