package withers.ingest.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.source.InputRefusedException;

/** Held against the JDK's own gzip and zip, which write what is read here. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PackedFileTest {

  private static final byte[] TEXT =
      "No,Chip\nP-1,999010000000011\n".getBytes(StandardCharsets.UTF_8);

  @TempDir Path folder;

  @Test
  void a_file_is_what_its_bytes_say_whatever_its_name() throws IOException {
    Path plain = file("export.csv.gz", TEXT);
    Path gzip = file("export.csv", gzip(TEXT));

    assertThat(only(plain)).isEqualTo(PackedFile.plain(plain));
    assertThat(only(gzip).packing()).isEqualTo(Packing.GZIP);
    assertThat(read(only(gzip))).isEqualTo(TEXT);
  }

  @Test
  void a_gzip_file_is_named_without_its_ending() throws IOException {
    PackedFile file = only(file("export.csv.gz", gzip(TEXT)));

    assertThat(file.name()).isEqualTo("export.csv.gz");
    assertThat(file.baseName()).isEqualTo("export.csv");
  }

  @Test
  void members_of_a_gzip_file_are_read_one_after_another() throws IOException {
    ByteArrayOutputStream two = new ByteArrayOutputStream();
    two.write(gzip(TEXT));
    two.write(gzip("P-2,999010000000012\n".getBytes(StandardCharsets.UTF_8)));

    assertThat(new String(read(only(file("a.gz", two.toByteArray()))), StandardCharsets.UTF_8))
        .isEqualTo("No,Chip\nP-1,999010000000011\nP-2,999010000000012\n");
  }

  @Test
  void a_gzip_file_cut_anywhere_is_refused() throws IOException {
    byte[] whole = gzip(noise(5_000));

    for (int length = 2; length < whole.length; length++) {
      Path cut = file("cut.gz", Arrays.copyOf(whole, length));

      assertThatThrownBy(() -> read(only(cut)))
          .as("%d of %d bytes", length, whole.length)
          .isInstanceOf(InputRefusedException.class)
          .hasMessage(
              "Expected a whole file, but found it cut off or damaged (cut.gz): ask for it again. Nothing was changed.");
    }
  }

  @Test
  void a_gzip_file_with_a_changed_byte_or_more_bytes_is_refused() throws IOException {
    byte[] changed = gzip(noise(5_000));
    changed[2_000] ^= 1;
    byte[] longer = Arrays.copyOf(gzip(TEXT), gzip(TEXT).length + 3);

    assertRefused(
        file("a.gz", changed),
        "Expected a whole file, but found it cut off or damaged (a.gz): ask for it again. Nothing was changed.");
    assertRefused(
        file("b.gz", longer),
        "Expected a whole file, but found it cut off or damaged (b.gz): ask for it again. Nothing was changed.");
  }

  @Test
  void what_unpacks_to_two_hundred_times_its_size_is_refused() throws IOException {
    assertRefused(
        file("zeros.gz", gzip(new byte[40_000_000])),
        "Expected a file that is at most 200 times as large when unpacked, but found more, as in files made to fill"
            + " up a disk or a memory (zeros.gz): ask who sent it; if it is an export, have it sent unpacked."
            + " Nothing was changed.");
    assertRefused(
        file("zeros.zip", zip(Map.of("zeros.csv", new byte[40_000_000]))),
        "Expected a file that is at most 200 times as large when unpacked, but found more, as in files made to fill"
            + " up a disk or a memory (zeros.zip/zeros.csv): ask who sent it; if it is an export, have it sent unpacked."
            + " Nothing was changed.");
  }

  @Test
  void an_export_of_equal_rows_is_not_taken_for_one_made_to_do_harm() throws IOException {
    byte[] rows = "P-1,999010000000011,,,,,\n".repeat(40_000).getBytes(StandardCharsets.UTF_8);

    assertThat(read(only(file("small.gz", gzip(rows))))).isEqualTo(rows);
  }

  @Test
  void an_archive_gives_its_entries_without_folders_and_hidden_files() throws IOException {
    Map<String, byte[]> entries = new LinkedHashMap<>();
    entries.put("march/", new byte[0]);
    entries.put("march/animals.csv", TEXT);
    entries.put("__MACOSX/._animals.csv", new byte[] {0, 5});
    entries.put("..\\people.csv", TEXT);

    List<PackedFile> files = PackedFile.in(file("all.zip", zip(entries)));

    assertThat(files)
        .extracting(PackedFile::name)
        .containsExactly("all.zip/animals.csv", "all.zip/people.csv");
    assertThat(files).extracting(PackedFile::baseName).containsExactly("animals.csv", "people.csv");
    assertThat(read(files.get(1))).isEqualTo(TEXT);
  }

  @Test
  void a_path_out_of_the_archive_writes_nothing() throws IOException {
    Path inner = Files.createDirectory(folder.resolve("inner"));
    Path archive = inner.resolve("up.zip");
    Files.write(archive, zip(Map.of("../../up.csv", TEXT)));

    assertThat(read(only(archive))).isEqualTo(TEXT);
    try (var files = Files.walk(folder)) {
      assertThat(files).containsExactlyInAnyOrder(folder, inner, archive);
    }
  }

  @Test
  void an_archive_cut_anywhere_is_refused() throws IOException {
    byte[] whole = zip(Map.of("a.csv", noise(2_000)));

    for (int length = 4; length < whole.length; length += 7) {
      assertRefused(
          file("cut.zip", Arrays.copyOf(whole, length)),
          "Expected a whole file, but found it cut off or damaged (cut.zip): ask for it again. Nothing was changed.");
    }
  }

  @Test
  void an_entry_with_a_changed_byte_is_refused() throws IOException {
    byte[] changed = zip(Map.of("a.csv", noise(2_000)));
    changed[700] ^= 1;

    assertRefused(
        file("a.zip", changed),
        "Expected a whole file, but found it cut off or damaged (a.zip/a.csv): ask for it again. Nothing was changed.");
  }

  @Test
  void an_archive_of_too_many_entries_is_refused() throws IOException {
    Map<String, byte[]> entries = new LinkedHashMap<>();
    for (int i = 0; i <= 1_000; i++) {
      entries.put(i + ".csv", new byte[0]);
    }

    assertRefused(
        file("many.zip", zip(entries)),
        "Expected an archive with at most 1,000 entries, but found 1,001 (many.zip): have the exports sent in several"
            + " archives. Nothing was changed.");
  }

  @Test
  void an_archive_of_nothing_is_refused() throws IOException {
    String message =
        "Expected an archive that holds exports, but found none in it (%s): ask for the exports again. Nothing was"
            + " changed.";

    assertRefused(file("none.zip", zip(Map.of())), message.formatted("none.zip"));
    assertRefused(
        file("hidden.zip", zip(Map.of(".hidden", TEXT))), message.formatted("hidden.zip"));
  }

  @Test
  void an_entry_that_needs_a_password_is_refused() throws IOException {
    byte[] bytes = zip(Map.of("a.csv", TEXT));
    flag(bytes, "PK\1\2", 8, 1); // general purpose flag, bit 0: APPNOTE.TXT, 4.4.4
    flag(bytes, "PK\3\4", 6, 1);

    assertRefused(
        file("a.zip", bytes),
        "Expected an archive without a password, but found one with a password (a.zip/a.csv): unpack it with the"
            + " password, and give what it holds. Nothing was changed.");
  }

  @Test
  void an_archive_in_an_archive_is_refused() throws IOException {
    byte[] inner = zip(Map.of("a.csv", TEXT));
    String message =
        "Expected an export in the archive, but found another archive (%s): unpack the outer one, and give what it"
            + " holds. Nothing was changed.";

    assertNested(file("a.zip", zip(Map.of("b.zip", inner))), message.formatted("a.zip/b.zip"));
    assertNested(file("c.zip", zip(Map.of("d.gz", gzip(TEXT)))), message.formatted("c.zip/d.gz"));
    assertNested(file("e.gz", gzip(inner)), message.formatted("e.gz"));
    assertNested(file("f.gz", gzip(gzip(TEXT))), message.formatted("f.gz"));
  }

  @Test
  void documents_of_other_kinds_are_refused_with_what_to_do() throws IOException {
    Map<String, byte[]> openDocument = new LinkedHashMap<>();
    openDocument.put("mimetype", new byte[0]);
    openDocument.put("content.xml", new byte[0]);

    assertRefused(
        file("a.ods", zip(openDocument)),
        "Expected CSV or a spreadsheet in the form of .xlsx, but found an OpenDocument file (a.ods): open it, and save"
            + " it as .xlsx or as CSV. Nothing was changed.");
    assertRefused(
        file("a.docx", zip(Map.of("[Content_Types].xml", new byte[0]))),
        "Expected CSV or a spreadsheet in the form of .xlsx, but found a document that is no spreadsheet (a.docx): open"
            + " it, and save it as .xlsx or as CSV. Nothing was changed.");
  }

  private void assertNested(Path file, String message) {
    PackedFile packed = only(file);
    assertThatThrownBy(() -> packed.isWorkbook(first(packed)))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(message);
  }

  private static byte[] first(PackedFile file) throws IOException {
    try (InputStream in = file.open()) {
      return in.readNBytes(Signature.LENGTH);
    }
  }

  private static void assertRefused(Path file, String message) {
    assertThatThrownBy(() -> read(only(file)))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(message);
  }

  private static PackedFile only(Path file) {
    List<PackedFile> files = PackedFile.in(file);
    assertThat(files).hasSize(1);
    return files.get(0);
  }

  private static byte[] read(PackedFile file) throws IOException {
    try (InputStream in = file.open()) {
      return in.readAllBytes();
    }
  }

  private Path file(String name, byte[] bytes) throws IOException {
    return Files.write(folder.resolve(name), bytes);
  }

  private static byte[] noise(int length) {
    byte[] bytes = new byte[length];
    new Random(7).nextBytes(bytes);
    return bytes;
  }

  private static byte[] gzip(byte[] bytes) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (OutputStream out = new GZIPOutputStream(packed)) {
      out.write(bytes);
    }
    return packed.toByteArray();
  }

  private static byte[] zip(Map<String, byte[]> entries) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(packed)) {
      for (Map.Entry<String, byte[]> entry : entries.entrySet()) {
        out.putNextEntry(new ZipEntry(entry.getKey()));
        out.write(entry.getValue());
      }
    }
    return packed.toByteArray();
  }

  private static void flag(byte[] zip, String signature, int offset, int bit) {
    String text = new String(zip, StandardCharsets.ISO_8859_1);
    zip[text.indexOf(signature) + offset] |= (byte) bit;
  }
}
