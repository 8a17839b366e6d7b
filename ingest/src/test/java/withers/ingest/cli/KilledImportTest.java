package withers.ingest.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import withers.contact.ContactVault;
import withers.contact.VaultKeyFile;
import withers.contact.sqlite.SqliteContactVault;
import withers.ingest.inbox.Receipts;
import withers.log.EventLog;
import withers.log.Tally;
import withers.point.Point;
import withers.testing.KillableJava;

/** An import that is killed leaves nothing half done, and the next one completes it. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Tag("long")
class KilledImportTest {

  private static final int ROWS = 1_200;
  private static final int MOMENTS = 20;
  private static final long SEED = 20310301;

  @TempDir static Path folder;
  private static TestWorkspace template;
  private static Ended undisturbed;

  /** All that an import leaves behind. */
  private record Ended(
      List<String> events,
      Tally tally,
      long leftovers,
      long contacts,
      List<String> quarantined,
      List<String> receipts) {
    static Ended of(TestWorkspace workspace) throws IOException {
      return new Ended(
          workspace.events(),
          workspace.markers().get(1).tally(),
          workspace.log(EventLog::sweep),
          contactsIn(workspace),
          quarantinedIn(workspace),
          receiptsIn(workspace));
    }
  }

  /** January is on the log; February waits in the inbox: new, changed, gone and bad rows. */
  @BeforeAll
  static void prepare() throws IOException {
    template = TestWorkspace.create(folder.resolve("template")).withClinic();
    template.clinicFile("harbour-2031-01-31.csv", rows(0, "Ada"));
    assertThat(template.ingest().exitCode()).isZero();
    Files.delete(template.open().paths().inbox().resolve("harbour-2031-01-31.csv"));
    String[] february = rows(5, "Bela");
    february[7] = "K7,12345678901234,Pip,2031-02-03,Somebody,";
    template.clinicFile("harbour-2031-02-28.csv", february);
    TestWorkspace copy = template.copy(folder.resolve("undisturbed"));
    copy.ingest();
    undisturbed = Ended.of(copy);
    assertThat(undisturbed.leftovers).isZero();
    assertThat(undisturbed.quarantined).hasSize(2);
    assertThat(undisturbed.receipts).containsExactly("harbour-2031-02-28.csv");
  }

  private static String[] rows(int from, String client) {
    return IntStream.range(from, ROWS + from)
        .mapToObj(
            i ->
                "K%d,9990100%08d,Pip %d,2031-01-%02d,%s %d,(212) 555-01%02d"
                    .formatted(i, i, i, 1 + i % 28, i % 3 == 0 ? client : "Cleo", i, i % 100))
        .toArray(String[]::new);
  }

  @ParameterizedTest
  @EnumSource(value = Point.class, names = "IMPORT_.*", mode = EnumSource.Mode.MATCH_ALL)
  void killed_at_a_point_and_run_again_it_is_as_if_nothing_had_happened(Point point)
      throws Exception {
    TestWorkspace workspace = template.copy(folder.resolve(point.name()));
    KillableJava process = ImportingProcess.stoppingAt(workspace, point);
    assertThat(process.comesTo(point)).as("comes to %s", point).isTrue();
    process.kill();

    boolean visible = point.compareTo(Point.IMPORT_AFTER_MARKER) >= 0;
    assertThat(workspace.markers()).hasSize(visible ? 2 : 1);
    assertComplete(workspace, point.name());
  }

  @Test
  void killed_at_random_moments_and_run_again_it_is_as_if_nothing_had_happened() throws Exception {
    long whole = nanosOfAnImport();
    Random random = new Random(SEED);
    for (int i = 0; i < MOMENTS; i++) {
      long moment = (long) (random.nextDouble() * whole);
      TestWorkspace workspace = template.copy(folder.resolve("moment-" + i));
      KillableJava process = ImportingProcess.start(workspace);
      assertThat(process.comesTo(Point.IMPORT_BEFORE_CHECK)).isTrue();
      process.runsFor(moment);
      process.kill();
      assertComplete(workspace, "seed %d, moment %d: after %d ns".formatted(SEED, i, moment));
    }
  }

  private static long nanosOfAnImport() throws Exception {
    KillableJava process = ImportingProcess.start(template.copy(folder.resolve("timed")));
    assertThat(process.comesTo(Point.IMPORT_BEFORE_CHECK)).isTrue();
    long start = System.nanoTime();
    assertThat(process.ends()).isTrue();
    return System.nanoTime() - start;
  }

  @Test
  void what_a_killed_import_wrote_is_swept_away() throws Exception {
    TestWorkspace workspace = template.copy(folder.resolve("leftovers"));
    KillableJava process = ImportingProcess.stoppingAt(workspace, Point.IMPORT_BEFORE_MARKER);
    assertThat(process.comesTo(Point.IMPORT_BEFORE_MARKER)).isTrue();
    process.kill();

    assertThat(workspace.<Long>log(EventLog::sweep)).isPositive();
  }

  private static void assertComplete(TestWorkspace workspace, String what) throws IOException {
    workspace.ingest();

    assertThat(workspace.markers()).as(what).hasSize(2);
    assertThat(Ended.of(workspace)).as(what).isEqualTo(undisturbed);
  }

  private static long contactsIn(TestWorkspace workspace) {
    try (ContactVault vault =
        SqliteContactVault.open(
            workspace.open().paths().contactVault(),
            VaultKeyFile.load(workspace.open().paths().vaultKey()))) {
      return vault.size();
    }
  }

  /** Which files have a receipt that can be read. */
  private static List<String> receiptsIn(TestWorkspace workspace) throws IOException {
    Receipts receipts = new Receipts(workspace.open().paths().receipts());
    try (Stream<Path> files = Files.list(workspace.open().paths().inbox())) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> receipts.find(name).isPresent())
          .sorted()
          .toList();
    }
  }

  private static List<String> quarantinedIn(TestWorkspace workspace) throws IOException {
    try (Stream<Path> files = Files.list(workspace.open().paths().quarantine())) {
      List<Path> all = files.toList();
      assertThat(all).hasSize(1);
      return Files.readAllLines(all.get(0));
    }
  }
}
