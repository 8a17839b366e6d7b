package withers.ingest;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import withers.chip.ChipNumberReader;
import withers.codec.Streams;
import withers.contact.MemoryContactVault;
import withers.contact.VaultKey;
import withers.fact.ChipEvent;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.ingest.known.KnownExports;
import withers.ingest.profile.Profiles;
import withers.log.LogStream;
import withers.log.memory.MemoryEventLog;
import withers.point.Points;

/** A clinic's exports, imported into a log in memory. */
final class TestImports {

  static final SourceId CLINIC = new SourceId("harbour-clinic");

  private static final int SMALL_BATCH = 3;
  static final String PROFILE =
      """
      organisation: harbour-clinic
      kind: clinic-patients
      files: '*.csv'
      export-date: {from: file-name}
      extent: full
      coverage: {reach: whole}
      limits: {rejects: 100 %, floor: 0}
      key: No
      columns: {chip: Chip, name: Animal, visit: Seen, client: {name: Client}}
      """;

  final MemoryEventLog log = new MemoryEventLog();
  final MemoryContactVault vault = new MemoryContactVault(new VaultKey(1, new byte[32]));
  private final Path folder;
  private Profiles profiles;
  private final Optional<KnownExports> known;
  private final EarlyRows.Time early;
  private long shortExport = Importer.SHORT;
  private long imports;

  TestImports(Path folder) {
    this(folder, Optional.empty(), EarlyRows.Time.WHEN_A_CORE_IS_FREE);
  }

  /** Imports that go by the last one. */
  static TestImports knowing(Path folder) {
    return knowing(folder, EarlyRows.Time.WHEN_A_CORE_IS_FREE);
  }

  /** Imports that go by the last one, and read then what they do not find there. */
  static TestImports knowing(Path folder, EarlyRows.Time early) {
    return new TestImports(folder, Optional.of(new KnownExports(folder.resolve("known"))), early);
  }

  private TestImports(Path folder, Optional<KnownExports> known, EarlyRows.Time early) {
    this.known = known;
    this.early = early;
    this.folder = folder;
    this.profiles = profiles(PROFILE);
  }

  private Profiles profiles(String profile) {
    try {
      Path sources = Files.createDirectories(folder.resolve("sources"));
      Files.writeString(sources.resolve("harbour-clinic.yaml"), profile);
      return Profiles.read(sources, TestDirectory.HARBOUR_CLINIC);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Goes on reading every export twice. */
  TestImports readingTwice() {
    shortExport = 0;
    return this;
  }

  /** Goes on with another profile. */
  TestImports with(String profile) {
    profiles = profiles(profile);
    return this;
  }

  /** Writes a file as it is given. */
  Path text(String name, String text) {
    try {
      return Files.writeString(folder.resolve(name), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Everything on the log, each event with what it was read from, in a stable order. */
  List<String> events() {
    List<String> events = new ArrayList<>();
    for (LogStream<ChipEvent> stream : List.of(Streams.CHIPS, Streams.UNPLACED, Streams.SUPPLY)) {
      for (int p = 0; p < stream.partitions(); p++) {
        log.snapshot()
            .replay(stream, p, (event, marker) -> events.add(marker.exportDate() + " " + event));
      }
    }
    return events.stream().sorted().toList();
  }

  /** Writes a file; each row is: key, chip, animal, day seen, client. */
  Path file(String name, List<String> rows) {
    try {
      Path file = folder.resolve(name);
      Files.writeString(
          file,
          "No,Chip,Animal,Seen,Client\n"
              + String.join("", rows.stream().map(r -> r + "\n").toList()));
      return file;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The quarantine files so far. */
  List<Path> quarantined() {
    Path quarantine = folder.resolve("quarantine");
    if (!Files.exists(quarantine)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(quarantine)) {
      return files.sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  ImportReport take(List<Path> files) {
    return take(files, step -> {});
  }

  /** Imports files that are one export, older ones too. */
  ImportReport take(List<Path> files, Points points) {
    return importer(points).run(set(files), Set.of(Allowance.values()), bytes -> {});
  }

  /** Imports exports by one importer, which is told of all of them before, or not. */
  void run(List<ExportSet> sets, boolean told) {
    Importer importer = importer(step -> {});
    if (told) {
      importer.expect(sets);
    }
    sets.forEach(set -> importer.run(set, Set.of(Allowance.values()), bytes -> {}));
  }

  /** Files that are one export. */
  ExportSet set(List<Path> files) {
    return new ExportSorter(profiles, Optional.empty(), Optional.empty(), Optional.empty())
        .sort(files)
        .sets()
        .get(0);
  }

  /** A file that is an export. */
  ExportSet set(Path file) {
    return set(List.of(file));
  }

  private Importer importer(Points points) {
    return new Importer(
        log,
        vault,
        new ChipNumberReader(true),
        folder.resolve("quarantine"),
        Clock.fixed(Instant.EPOCH, ZoneOffset.UTC),
        () -> new ImportId(new UUID(0, ++imports)),
        points,
        SMALL_BATCH,
        known,
        early,
        shortExport);
  }

  static LocalDate day(String text) {
    return LocalDate.parse(text);
  }
}
