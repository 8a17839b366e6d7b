package withers.ingest.inspect;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.ingest.csv.CsvFile;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.Profiles;
import withers.ingest.profile.SourceProfile;
import withers.ingest.rows.Row;
import withers.organisation.Directory;
import withers.workspace.Workspace;

/** The demo's exports with the profiles that its own workspace has for them. */
final class DemoExports {

  /** An export as it is: the first of the rows is the header. */
  record Export(Path path, String file, SourceProfile profile, List<List<String>> rows) {
    @Override
    public String toString() {
      return file;
    }
  }

  private DemoExports() {}

  static Directory directory() {
    return Workspace.open(
            root().resolve("fixtures/demo/workspace"),
            Clock.fixed(Instant.parse("2026-10-01T00:00:00Z"), ZoneOffset.UTC))
        .directory();
  }

  static List<Export> all() {
    Path demo = root().resolve("fixtures/demo");
    Profiles profiles = Profiles.read(demo.resolve("workspace/sources"), directory());
    return Stream.of("2026-09", "2026-10")
        .flatMap(month -> files(demo.resolve(month)).stream())
        .map(file -> read(file, profiles))
        .toList();
  }

  private static Path root() {
    Path at = Path.of("").toAbsolutePath();
    while (!Files.isDirectory(at.resolve("fixtures/demo"))) {
      at = Optional.ofNullable(at.getParent()).orElseThrow();
    }
    return at;
  }

  private static List<Path> files(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(".csv")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Export read(Path file, Profiles profiles) {
    SourceProfile profile = profiles.recognising(file.getFileName().toString()).get(0);
    ExportFile export = ExportFile.inspect(file, profile.format());
    List<List<String>> rows = new ArrayList<>();
    try (CsvFile csv = CsvFile.open(export, profile.format(), profile.key(), bytes -> {})) {
      rows.add(csv.header().names());
      for (Optional<Row> row = csv.next(); row.isPresent(); row = csv.next()) {
        rows.add(cells(row.get()));
      }
    }
    return new Export(file, file.getFileName().toString(), profile, rows);
  }

  private static List<String> cells(Row row) {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < row.size(); i++) {
      cells.add(row.cell(i));
    }
    return cells;
  }
}
