package withers.bench;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;

/**
 * A network of any number of clinics, each with so many animals that are registered to somebody of
 * before, and one registry that holds them all. All of it is invented.
 *
 * @param clinics how many there are, from 1
 * @param animals how many each has, from 1
 */
record Crowd(int clinics, int animals) {

  /** The day that is judged; the exports are of this day, too. */
  static final LocalDate AS_OF = LocalDate.of(2026, 3, 1);

  private static final String SETTINGS =
      """
      network: Long Coast Network
      settle-seconds: 0
      zone: UTC
      phone-region: US
      language: en
      coordinator: long-coast
      test-numbers: accepted
      mail:
        overview: kept
        server: {host: localhost, port: %d, security: none}
      """;

  private static final String REGISTRY =
      """
      organisation: long-register
      kind: registry-contacts
      files: [register-*.csv]
      export-date: {from: file-name}
      extent: full
      coverage: {reach: whole}
      key: [No]
      columns:
        chip: Chip
        registered: Since
        primary: {name: Contact, phones: [Phone], emails: [Mail]}
      """;

  private static final String CLINIC =
      """
      organisation: %1$s
      kind: clinic-patients
      files: [%1$s-*.csv]
      export-date: {from: file-name}
      extent: full
      coverage: {reach: whole}
      key: [No]
      columns:
        chip: Chip
        name: Animal
        visit: Seen
        client: {name: Client, phones: [Phone], emails: [Mail]}
      """;

  /** Writes the workspace and its exports. */
  void write(Path folder, int port) throws IOException {
    Files.createDirectories(folder.resolve("sources"));
    Files.createDirectories(folder.resolve("inbox"));
    Files.writeString(folder.resolve("withers.yaml"), SETTINGS.formatted(port));
    Files.writeString(folder.resolve("sources/register.yaml"), REGISTRY);
    try (BufferedWriter organisations =
            Files.newBufferedWriter(folder.resolve("organisations.yaml"));
        BufferedWriter register =
            Files.newBufferedWriter(folder.resolve("inbox/register-%s.csv".formatted(AS_OF)))) {
      organisations.write(
          """
          organisations:
            - {id: long-coast, name: Long Coast Network, kind: coordinator, mail: post@long-coast.example.org}
            - {id: long-register, name: Long Coast Register, kind: registry, mail: post@long-register.example.org}
          """);
      register.write("No,Chip,Since,Contact,Phone,Mail\n");
      for (int clinic = 0; clinic < clinics; clinic++) {
        organisations.write(organisation(clinic));
        write(folder, clinic, register);
      }
    }
  }

  private static String id(int clinic) {
    return "clinic-%04d".formatted(clinic);
  }

  private static String organisation(int clinic) {
    return "  - {id: %1$s, name: Clinic %2$d, kind: clinic, mail: post@%1$s.example.org}\n"
        .formatted(id(clinic), clinic);
  }

  private void write(Path folder, int clinic, BufferedWriter register) throws IOException {
    String id = id(clinic);
    Files.writeString(folder.resolve("sources/%s.yaml".formatted(id)), CLINIC.formatted(id));
    try (BufferedWriter patients =
        Files.newBufferedWriter(folder.resolve("inbox/%s-%s.csv".formatted(id, AS_OF)))) {
      patients.write("No,Chip,Animal,Seen,Client,Phone,Mail\n");
      for (int animal = 0; animal < animals; animal++) {
        int number = clinic * animals + animal;
        String chip = "999%012d".formatted(number);
        patients.write(
            "P%d,%s,Pip %d,%s,Ada Example %d,%s,ada%d@example.org\n"
                .formatted(number, chip, animal, seen(animal), number, phone(number, 200), number));
        register.write(
            "R%d,%s,2020-05-01,Bo Sample %d,%s,bo%d@example.org\n"
                .formatted(number, chip, number, phone(number, 600), number));
      }
    }
  }

  /**
   * The registry's export is the grace period younger, and the start recent: all of it is listed.
   */
  private static LocalDate seen(int animal) {
    return AS_OF.minusDays(40 + animal % 60);
  }

  /** One of those that are reserved for fiction. */
  private static String phone(int number, int area) {
    return "%d 555 01%02d".formatted(area + number / 100 % 400, number % 100);
  }
}
