package withers.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.source.InputRefusedException;

/** When the last export is gone by, how much that spares, and what it takes to lose it. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class KnownExportsTest {

  private static final int ROWS = 60;
  private static final long SEED = 20310131;

  @TempDir Path folder;
  private TestImports imports;
  private TestImports reading;

  @BeforeEach
  void import_January() {
    imports = TestImports.knowing(folder.resolve("knowing"));
    reading = new TestImports(folder.resolve("reading"));
    assertThat(take("2031-01-31", rows(0, ROWS)).reuse()).isEqualTo(ImportReport.Reuse.NONE);
  }

  private static List<String> rows(int from, int to) {
    return new ArrayList<>(
        IntStream.range(from, to)
            .mapToObj(i -> "K%d,9990100%08d,Pip,2031-01-03,Ada %d".formatted(i, i, i % 7))
            .toList());
  }

  /** Imports into both, and holds that nothing but the work differs. */
  private ImportReport take(String date, List<String> rows) {
    ImportReport known = imports.take(List.of(imports.file("a-" + date + ".csv", rows)));
    ImportReport all = reading.take(List.of(reading.file("a-" + date + ".csv", rows)));
    assertThat(known.tally()).isEqualTo(all.tally());
    assertThat(known.withheld()).isEqualTo(all.withheld());
    assertThat(imports.events()).isEqualTo(reading.events());
    return known;
  }

  private static ImportReport.Reuse recognised(long rows, long lookedUp) {
    return new ImportReport.Reuse(rows, lookedUp, java.util.Optional.empty());
  }

  @Test
  void an_export_like_the_last_one_is_not_read_at_all() {
    assertThat(take("2031-02-28", rows(0, ROWS)).reuse()).isEqualTo(recognised(ROWS, 0));
    assertThat(take("2031-03-31", rows(0, ROWS)).reuse()).isEqualTo(recognised(ROWS, 0));
  }

  @Test
  void what_is_new_changed_or_gone_is_known_by_the_month_after() {
    List<String> rows = rows(1, ROWS + 2);
    rows.set(10, rows.get(10).replace("Ada", "Bela"));
    assertThat(take("2031-02-28", rows).reuse()).isEqualTo(recognised(ROWS - 2, 2));
    assertThat(take("2031-03-31", rows).reuse()).isEqualTo(recognised(ROWS + 1, 0));
  }

  @Test
  void no_file_of_what_is_known_stays_open() throws IOException {
    Path open = Path.of("/proc/self/fd");
    assumeTrue(Files.isDirectory(open), "Only Linux tells which files are open");
    List<String> rows = rows(0, ROWS);
    rows.set(5, rows.get(5).replace("Ada", "Bela"));
    take("2031-02-28", rows);
    String otherEnds = "No,Chip,Animal,Seen,Client\r\n" + String.join("\r\n", rows) + "\r\n";
    imports.take(List.of(imports.text("b-2031-03-10.csv", otherEnds)));
    reading.take(List.of(reading.text("b-2031-03-10.csv", otherEnds)));
    rows.set(6, "K6," + "\"");
    assertThatThrownBy(() -> take("2031-03-31", rows)).isInstanceOf(InputRefusedException.class);

    try (Stream<Path> files = Files.list(open)) {
      assertThat(files.filter(Files::isSymbolicLink).map(KnownExportsTest::target))
          .noneMatch(name -> name.contains("timelines-"));
    }
  }

  /** What a link leads to; nothing when it is gone by now. */
  private static String target(Path link) {
    try {
      return Files.readSymbolicLink(link).getFileName().toString();
    } catch (IOException gone) {
      return "";
    }
  }

  @Test
  void rows_in_another_order_are_looked_up() {
    List<String> rows = rows(30, ROWS);
    rows.addAll(rows(0, 30));
    ImportReport.Reuse reuse = take("2031-02-28", rows).reuse();

    assertThat(reuse.recognised()).isEqualTo(ROWS);
    assertThat(reuse.lookedUp()).isPositive();
  }

  @Test
  void rejected_rows_are_told_again_every_month() {
    List<String> rows = rows(0, ROWS);
    rows.set(5, "K5,12345678901234,Pip,2031-01-03,Ada");
    take("2031-02-28", rows);
    ImportReport march = take("2031-03-31", rows);

    assertThat(march.reuse().recognised()).isEqualTo(ROWS - 1);
    assertThat(march.tally().rejected()).isEqualTo(1);
    assertThat(march.quarantine()).isPresent();
  }

  @Test
  void rows_with_one_key_and_different_contents_are_read_every_month() {
    List<String> rows = rows(0, ROWS);
    rows.add(30, rows.get(5).replace("Pip", "Rex"));
    ImportReport february = take("2031-02-28", rows);
    ImportReport march = take("2031-03-31", rows);

    assertThat(february.repeatedKeys()).isEqualTo(1);
    assertThat(february.reuse().recognised()).isEqualTo(ROWS - 1);
    assertThat(march.repeatedKeys()).isEqualTo(1);
    assertThat(march.reuse().recognised()).isEqualTo(ROWS - 1);
  }

  @Test
  void an_older_export_or_one_of_the_same_day_is_read() {
    assertThat(take("2031-01-31", rows(0, ROWS + 1)).reuse()).isEqualTo(ImportReport.Reuse.NONE);
    assertThat(take("2030-12-31", rows(0, ROWS)).reuse()).isEqualTo(ImportReport.Reuse.NONE);
    assertThat(take("2031-02-28", rows(0, ROWS)).reuse()).isEqualTo(ImportReport.Reuse.NONE);
    assertThat(take("2031-03-31", rows(0, ROWS)).reuse()).isEqualTo(recognised(ROWS, 0));
  }

  @Test
  void another_header_is_another_reading() throws IOException {
    Path file = imports.file("a-2031-02-28.csv", rows(0, ROWS));
    Files.writeString(file, Files.readString(file).replace("Animal", "animal"));

    assertThat(imports.take(List.of(file)).reuse()).isEqualTo(ImportReport.Reuse.NONE);
  }

  @Test
  void another_profile_is_another_reading() throws IOException {
    Path profile = folder.resolve("knowing/sources/harbour-clinic.yaml");
    TestImports changed = imports.with(Files.readString(profile).replace("key: No", "key:  No"));
    Path file = changed.file("a-2031-02-28.csv", rows(0, ROWS));

    assertThat(changed.take(List.of(file)).reuse()).isEqualTo(ImportReport.Reuse.NONE);
  }

  @Test
  void what_is_kept_is_its_owner_s_only_and_holds_no_text_of_a_row() throws IOException {
    for (Path file : kept()) {
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
          .isEqualTo("rw-------");
      assertThat(new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1))
          .doesNotContain("Ada")
          .doesNotContain("Pip");
    }
    assertThat(kept()).hasSize(3);
  }

  private List<Path> kept() {
    try (Stream<Path> files = Files.list(folder.resolve("knowing/known/harbour-clinic"))) {
      return files.sorted().collect(Collectors.toList());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Beside the stamp: an order, its changes, all timelines, and at most eight files of changes. */
  @Test
  void old_files_do_not_pile_up() {
    Set<Integer> counts = new HashSet<>();
    for (int month = 0; month < 40; month++) {
      take("20%d-01-15".formatted(32 + month), rows(month, ROWS + month));
      assertThat(kept().size()).isBetween(3, 4 + 9);
      counts.add(kept().size());
    }
    assertThat(counts).as("how many files there were").hasSizeGreaterThan(5);
    take("2099-01-15", rows(39, ROWS + 39));
    int last = kept().size();
    take("2099-02-15", rows(39, ROWS + 39));
    assertThat(kept()).hasSize(last);
  }

  @Test
  void changes_of_many_months_are_all_known() {
    List<String> rows = rows(0, ROWS);
    for (int month = 0; month < 30; month++) {
      rows.set(month, rows.get(month).replace("Ada", "Bela " + month));
      rows.set(ROWS - 1, rows.get(ROWS - 1).replaceAll("Ada.*", "Ada " + month));
      assertThat(take("20%d-01-15".formatted(32 + month), rows).reuse().recognised())
          .isEqualTo(ROWS - 2);
      assertThat(take("20%d-02-15".formatted(32 + month), rows).reuse())
          .isEqualTo(recognised(ROWS, 0));
    }
    assertThat(imports.log.snapshot().markers()).hasSize(61);
  }

  @Test
  void files_of_changes_that_are_harmed_are_not_used() throws IOException {
    byte[] foreign = Files.readAllBytes(kept().get(0));
    Set<Path> whole = Set.copyOf(kept());
    List<String> rows = rows(0, ROWS);
    int year = 32;
    for (int file = 0; file < 2; file++) {
      for (int damage = 0; damage < 4; damage++) {
        rows.set(3, rows.get(3).replaceAll("Ada.*", "Ada " + year));
        take("20%d-01-15".formatted(year), rows);
        List<Path> changes = new ArrayList<>(kept());
        changes.removeAll(whole);
        changes.removeIf(path -> path.endsWith("stamp"));
        assertThat(changes).as("files of changes").hasSize(2);
        harm(changes.get(file), damage, foreign);
        assertThat(take("20%d-02-15".formatted(year), rows).reuse())
            .isEqualTo(ImportReport.Reuse.NONE);
        whole = Set.copyOf(kept());
        year++;
      }
    }
  }

  /** Whatever byte is another, the import is right, and what is kept afterwards is whole. */
  @Test
  void flipped_bytes_are_noticed_or_do_not_matter() throws IOException {
    Random random = new Random(SEED);
    for (int i = 0; i < 60; i++) {
      List<Path> files = kept();
      Path file = files.get(i % files.size());
      byte[] bytes = Files.readAllBytes(file);
      int at = random.nextInt(bytes.length);
      bytes[at] ^= (byte) (1 << random.nextInt(8));
      Files.write(file, bytes);

      List<String> rows = rows(i, ROWS + i);
      rows.set(random.nextInt(rows.size()), "K%d,999010000999999,Rex,2031-01-04,Bela".formatted(i));
      take("20%d-01-15".formatted(32 + i), rows);
    }
    List<String> rows = rows(0, ROWS);
    take("2099-01-15", rows);
    assertThat(take("2099-02-15", rows).reuse()).isEqualTo(recognised(ROWS, 0));
  }

  @Test
  void files_cut_off_emptied_deleted_or_of_another_source_are_not_used() throws IOException {
    byte[] foreign = Files.readAllBytes(kept().get(0));
    int month = 1;
    for (int file = 0; file < 3; file++) {
      for (int damage = 0; damage < 4; damage++) {
        harm(kept().get(file), damage, foreign);
        month++;
        assertThat(take("20%d-01-15".formatted(31 + month), rows(0, ROWS + month % 2)).reuse())
            .isEqualTo(ImportReport.Reuse.NONE);
      }
    }
  }

  private static void harm(Path file, int damage, byte[] foreign) throws IOException {
    byte[] bytes = Files.readAllBytes(file);
    if (damage == 0) {
      Files.write(file, java.util.Arrays.copyOf(bytes, bytes.length - 1));
    } else if (damage == 1) {
      Files.write(file, new byte[0]);
    } else if (damage == 2) {
      Files.delete(file);
    } else {
      Files.write(file, foreign);
    }
  }

  @Test
  void an_export_that_cannot_be_kept_is_imported_and_says_so() throws IOException {
    for (Path file : kept()) {
      Files.delete(file);
    }
    Path blocked = folder.resolve("knowing/known/harbour-clinic");
    Files.delete(blocked);
    Files.writeString(blocked, "in the way");

    ImportReport report = take("2031-02-28", rows(0, ROWS));

    assertThat(report.result()).isEqualTo(ImportReport.Result.IMPORTED);
    assertThat(report.reuse().notKept()).isPresent();
  }
}
