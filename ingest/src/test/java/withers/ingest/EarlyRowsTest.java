package withers.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.chip.ChipNumberReader;
import withers.contact.ContactRef;
import withers.contact.MemoryContactVault;
import withers.contact.Referenced;
import withers.contact.VaultKey;
import withers.id.ImportId;
import withers.id.RecordKey;
import withers.ingest.change.ChangeDetector;
import withers.ingest.change.Listings;
import withers.ingest.change.Remembered;
import withers.ingest.csv.CsvLayout;
import withers.ingest.csv.LayoutFinder;
import withers.ingest.known.KeyMark;
import withers.ingest.known.KnownRecords;
import withers.ingest.translate.Translation;
import withers.log.memory.MemoryEventLog;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class EarlyRowsTest {

  private static final String HEADER = "No,Chip,Animal,Seen,Client\n";
  private static final VaultKey KEY = new VaultKey(1, new byte[32]);
  private static final ChipNumberReader NUMBERS = new ChipNumberReader(true);
  private static final Listings NONE = none();
  private static final KnownRecords NOTHING =
      new KnownRecords() {
        @Override
        public KeyMark mark(RecordKey key) {
          return new KeyMark(key.hashCode(), OptionalInt.empty());
        }

        @Override
        public Optional<byte[]> timeline(RecordKey key) {
          return Optional.empty();
        }

        @Override
        public Listings listings() {
          return NONE;
        }
      };

  private static Listings none() {
    try {
      return Listings.read(
          new DataInputStream(new ByteArrayInputStream(new byte[Long.BYTES + Integer.BYTES])));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @TempDir Path folder;
  private int batch = Importer.FULL_BATCH;
  private final MemoryEventLog log = new MemoryEventLog();
  private final MemoryContactVault vault = new MemoryContactVault(KEY);

  @Test
  void rows_are_those_of_a_file_of_them_alone_with_their_lines_in_the_whole_one()
      throws IOException {
    for (long seed = 0; seed < 100; seed++) {
      Random random = new Random(seed);
      List<String> records =
          IntStream.range(0, 1 + random.nextInt(900)).mapToObj(i -> record(i, random)).toList();
      ExportSet alone = set("alone-" + seed, HEADER + String.join("\n", records) + "\n");
      Set<ContactRef> asked = new HashSet<>();
      EarlyRows early = early(alone, EarlyRows.Time.AT_ONCE, asked);
      List<Long> lines = tell(early, records, random);

      EarlyRows.Result read = early.result().orElseThrow();
      List<HeldRow> expected = read(alone);
      assertThat(read.rows().stream().map(row -> row.row().text()))
          .as("seed %d", seed)
          .containsExactlyElementsOf(expected.stream().map(row -> row.row().text()).toList());
      assertThat(read.rows().stream().map(EarlyRowsTest::said))
          .as("seed %d", seed)
          .containsExactlyElementsOf(expected.stream().map(EarlyRowsTest::said).toList());
      assertThat(read.rows().stream().map(row -> row.row().line()))
          .as("seed %d", seed)
          .containsExactlyElementsOf(lines);
      assertThat(asked).as("seed %d", seed).isEqualTo(references(expected));
      assertThat(read.intake().rows()).as("seed %d", seed).isEqualTo(expected.size());
    }
  }

  @Test
  void nothing_is_written_before_it_is_released() throws IOException {
    batch = 1;
    ExportSet set = set("held", HEADER + "P1,999010000000017,Pip,2031-01-02,Ada\n");
    EarlyRows early = early(set, EarlyRows.Time.AT_ONCE, new HashSet<>());
    tell(
        early,
        List.of("P1,999010000000017,Pip,2031-01-02,Ada", "P2,999010000000018,Pop,2031-01-02,Ben"),
        new Random(1));
    try (BatchWriter writer = early.result().orElseThrow().intake().writer()) {
      assertThat(writer.count()).isPositive();
      assertThat(vault.size()).isZero();
      assertThat(log.sweep()).isZero();

      writer.release();
      writer.flush();
      assertThat(vault.size()).isEqualTo(2);
      assertThat(log.sweep()).isPositive();
    }
  }

  @Test
  void contacts_that_are_stored_are_not_stored_again() throws IOException {
    ExportSet set = set("stored", HEADER + "P1,999010000000017,Pip,2031-01-02,Ada\n");
    EarlyRows early =
        new EarlyRows(
            set,
            layout(set),
            opener -> new ExportReader(set, NUMBERS, KEY::reference, opener),
            UnaryOperator.identity(),
            known -> intake(set, known),
            EarlyRows.Time.AT_ONCE);
    tell(early, List.of("P1,999010000000017,Pip,2031-01-02,Ada"), new Random(1));
    try (BatchWriter writer = early.result().orElseThrow().intake().writer()) {
      writer.release();
      writer.flush();
    }
    assertThat(log.sweep()).isPositive();
    assertThat(vault.size()).isZero();
  }

  private static String record(int i, Random random) {
    String name = random.nextInt(5) == 0 ? "\"Ada,\nExample %d\"" : "Ada Example %d";
    String chip = random.nextInt(9) == 0 ? "nonsense" : "99901%010d".formatted(i);
    return "P%d,%s,Pip,2031-01-0%d,%s"
        .formatted(i, chip, 1 + random.nextInt(9), name.formatted(random.nextInt(300)));
  }

  /**
   * Tells all records, as if some others stood before and between them; on which lines, it says.
   */
  private static List<Long> tell(EarlyRows early, List<String> records, Random random) {
    List<Long> lines = new ArrayList<>();
    long line = 2;
    early.begin(NOTHING, HEADER.getBytes(StandardCharsets.UTF_8), line);
    for (String record : records) {
      line += random.nextInt(3);
      lines.add(line);
      byte[] bytes = ("x" + record + "x").getBytes(StandardCharsets.UTF_8);
      int height = record.contains("\n") ? 2 : 1;
      early.record(bytes, 1, bytes.length - 2, line, height);
      line += height;
    }
    early.end();
    return lines;
  }

  /** What a row says, whatever line it stands on. */
  private static Object said(HeldRow row) {
    return row.translation() instanceof Translation.Stated stated
        ? List.of(stated.key(), stated.contacts(), stated.statements().get(0).fact())
        : row.translation();
  }

  private static Set<ContactRef> references(List<HeldRow> rows) {
    Set<ContactRef> references = new HashSet<>();
    for (HeldRow row : rows) {
      if (row.translation() instanceof Translation.Stated stated) {
        stated.contacts().stream().map(Referenced::reference).forEach(references::add);
      }
    }
    return references;
  }

  @Test
  void whoever_asks_before_anybody_reads_reads_himself() throws IOException {
    ExportSet set = set("one", HEADER + "P1,999010000000017,Pip,2031-01-02,Ada\n");
    EarlyRows early = early(set, EarlyRows.Time.WHEN_A_CORE_IS_FREE, new HashSet<>());
    assertThat(early.result()).isEmpty();
    tell(early, List.of("P1,999010000000017,Pip,2031-01-02,Ada"), new Random(1));
  }

  @Test
  void more_than_are_held_are_given_up() throws IOException {
    ExportSet set = set("many", HEADER + "P1,999010000000017,Pip,2031-01-02,Ada\n");
    EarlyRows early = early(set, EarlyRows.Time.AT_ONCE, new HashSet<>());
    List<String> records =
        IntStream.rangeClosed(0, UnreadRows.MOST_HELD)
            .mapToObj(i -> "P%d,999010000000017,Pip,2031-01-02,Ada".formatted(i))
            .toList();
    tell(early, records, new Random(1));
    assertThat(early.result()).isEmpty();
  }

  @Test
  void what_cannot_be_read_is_left_to_who_asks() throws IOException {
    ExportSet set = set("broken", HEADER + "P1,999010000000017,Pip,2031-01-02,Ada\n");
    EarlyRows early = early(set, EarlyRows.Time.AT_ONCE, new HashSet<>());
    tell(early, List.of("P1,999010000000017,Pip,2031-01-02,\"Ada\" Example"), new Random(1));
    assertThat(early.result()).isEmpty();
  }

  private ExportSet set(String name, String text) throws IOException {
    TestImports imports = new TestImports(Files.createDirectory(folder.resolve(name)));
    return imports.set(imports.text("2031-01-31.csv", text));
  }

  /**
   * @param asked takes the references that are looked up; none of them is stored
   */
  private EarlyRows early(ExportSet set, EarlyRows.Time time, Set<ContactRef> asked) {
    return new EarlyRows(
        set,
        layout(set),
        opener -> new ExportReader(set, NUMBERS, KEY::reference, opener),
        references -> {
          asked.addAll(references);
          return Set.of();
        },
        known -> intake(set, known),
        time);
  }

  /** Writes when it is let. */
  private Intake intake(ExportSet set, Remembered known) {
    ImportId id = new ImportId(new UUID(0, 1));
    BatchWriter writer = new BatchWriter(log, vault, set.profile().id(), id, step -> {}, batch);
    writer.holdBack();
    return new Intake(
        set,
        new ChangeDetector(log.snapshot(), set.export(), known, writer::event),
        writer,
        KeptOut.of(vault));
  }

  private static CsvLayout layout(ExportSet set) {
    return LayoutFinder.find(set.files().get(0), set.format().text(), set.headers());
  }

  private static List<HeldRow> read(ExportSet set) {
    List<HeldRow> rows = new ArrayList<>();
    new ExportReader(set, NUMBERS, KEY::reference, bytes -> {})
        .read(
            (file, header, row, translation) ->
                rows.add(
                    HeldRow.of(
                        file,
                        header,
                        new UnreadRow(row, rows.size(), row.line()),
                        translation,
                        NOTHING::mark)));
    return rows;
  }
}
