package withers.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.chip.ChipNumber;
import withers.chip.ChipNumberReader;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Locator;
import withers.fact.Origin;
import withers.fact.Party;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.id.RecordKey;
import withers.ingest.change.ChangeDetector;
import withers.ingest.change.Rebuilt;
import withers.ingest.xlsx.Workbooks;
import withers.source.InputRefusedException;

/** How much of what a source has said is read for an export. All numbers are invented. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RebuilderTest {

  private static final String CHANGES =
      TestImports.PROFILE.replace("extent: full", "extent: changes");
  private static final List<String> FEBRUARY =
      List.of("K1,999010000000017,Pip,2031-02-03,Ada", "K2,999010000000025,Tam,some day,Bela");

  @TempDir Path folder;

  @Test
  void a_short_export_of_changes_is_compared_with_what_was_said_of_its_records_alone() {
    TestImports imports = withJanuary(CHANGES);
    ExportSet february = imports.set(imports.file("2031-02-28.csv", FEBRUARY));

    assertThat(speaksOf("K1", february, imports, Importer.SHORT)).isTrue();
    assertThat(speaksOf("K2", february, imports, Importer.SHORT)).as("can't be read").isTrue();
    assertThat(speaksOf("K3", february, imports, Importer.SHORT)).isFalse();
  }

  @Test
  void a_longer_one_is_compared_with_all() {
    TestImports imports = withJanuary(CHANGES);
    ExportSet february = imports.set(imports.file("2031-02-28.csv", FEBRUARY));
    long size = february.files().get(0).size();

    assertThat(speaksOf("K3", february, imports, size)).isFalse();
    assertThat(speaksOf("K3", february, imports, size - 1)).isTrue();
  }

  @Test
  void one_that_is_long_beside_what_its_source_has_said_is_compared_with_all() {
    TestImports imports = withJanuary(CHANGES);
    ExportSet february = imports.set(imports.file("2031-02-28.csv", rows(2_000)));

    assertThat(speaksOf("K9999", february, imports, Importer.SHORT)).isTrue();
  }

  @Test
  void a_full_one_is_compared_with_all() {
    TestImports imports = withJanuary(TestImports.PROFILE);
    ExportSet february = imports.set(imports.file("2031-02-28.csv", FEBRUARY));

    assertThat(speaksOf("K3", february, imports, Importer.SHORT)).isTrue();
  }

  @Test
  void one_whose_rows_cannot_be_read_is_compared_with_all() {
    TestImports imports = withJanuary(CHANGES);
    ExportSet february = imports.set(imports.text("2031-02-28.csv", "No,Chip\nK1,\"999"));

    assertThat(speaksOf("K3", february, imports, Importer.SHORT)).isTrue();
  }

  @Test
  void one_with_joined_files_is_compared_with_all() {
    String joined =
        CHANGES
            .replace("'*.csv'", "'2031-*.csv'")
            .replace("Client}", "client.Name}")
            .concat("joins: {client: {files: 'people-*.csv', key: Person, on: Client}}\n");
    TestImports imports = withJanuary(CHANGES).with(joined);
    Path changes = imports.file("2031-02-28.csv", FEBRUARY);
    Path people = imports.text("people-2031-02-28.csv", "Person,Name\nAda,Ada Example\n");
    ExportSet february = imports.set(List.of(changes, people));

    assertThat(february.joined()).hasSize(1);
    assertThat(speaksOf("K3", february, imports, Importer.SHORT)).isTrue();
  }

  @Test
  void a_workbook_is_compared_with_all() throws IOException {
    TestImports imports = new TestImports(folder).with(CHANGES.replace("'*.csv'", "'*.*'"));
    imports.take(List.of(imports.file("2031-01-31.csv", rows(2_000))));
    byte[] workbook =
        Workbooks.ofSheet(
            sheet -> {
              Workbooks.row(sheet, "No", "Chip", "Animal", "Seen", "Client");
              Workbooks.row(sheet, "K1", "999010000000017", "Pip", "2031-02-03", "Ada");
            });
    ExportSet february = imports.set(Files.write(folder.resolve("2031-02-28.xlsx"), workbook));
    ExportSet text = imports.set(imports.file("2031-02-28.csv", FEBRUARY));

    assertThat(speaksOf("K3", february, imports, Importer.SHORT)).isTrue();
    assertThat(speaksOf("K3", text, imports, Importer.SHORT)).as("the same as text").isFalse();
    assertThat(february.files().get(0).size())
        .as("short beside what its source has said")
        .isLessThan(16 * Rebuilder.events(february, imports.log.snapshot()));
  }

  @Test
  void exports_of_changes_write_what_they_write_when_all_is_read() {
    TestImports byKeys = withJanuary(folder.resolve("keys"), CHANGES);
    TestImports whole = withJanuary(folder.resolve("whole"), CHANGES).readingTwice();
    for (TestImports imports : List.of(byKeys, whole)) {
      imports.take(List.of(imports.file("2031-02-28.csv", FEBRUARY)));
      imports.take(List.of(imports.file("2031-02-14.csv", rows(3))));
      imports.take(List.of(imports.file("2031-03-31.csv", rows(5))));
    }

    assertThat(byKeys.events()).isEqualTo(whole.events());
    assertThat(byKeys.log.snapshot().markers()).isEqualTo(whole.log.snapshot().markers());
  }

  private TestImports withJanuary(String profile) {
    return withJanuary(folder, profile);
  }

  private static TestImports withJanuary(Path folder, String profile) {
    TestImports imports = new TestImports(folder).with(profile);
    imports.take(List.of(imports.file("2031-01-31.csv", rows(40))));
    return imports;
  }

  private static List<String> rows(int count) {
    return IntStream.rangeClosed(1, count)
        .mapToObj(i -> "K%d,%015d,Pip,2031-01-03,Ada".formatted(i, 999010000000000L + 8L * i))
        .toList();
  }

  /** Whether something is known of a record, be it that nothing was said of it. */
  private static boolean speaksOf(String key, ExportSet set, TestImports imports, long most) {
    Rebuilt said =
        new Rebuilder(new ChipNumberReader(true), most).rebuild(set, imports.log.snapshot());
    ChangeDetector detector =
        new ChangeDetector(imports.log.snapshot(), set.export(), said, event -> {});
    try {
      detector.row(new RecordKey(key), List.of(visit(set, new RecordKey(key))));
      return true;
    } catch (InputRefusedException unknown) {
      return false;
    }
  }

  private static ChipEvent visit(ExportSet set, RecordKey key) {
    return new ChipEvent(
        new Subject.Chip(ChipNumber.parse("999010000000017")),
        new Origin(set.profile().id(), key, Slot.VISIT, set.exportDate(), new Locator(0, 2)),
        Optional.empty(),
        new Fact.Attended(new Party.Organisation("harbour-clinic")));
  }
}
