package withers.ingest.dirty;

import static withers.ingest.xlsx.Workbooks.formatted;
import static withers.ingest.xlsx.Workbooks.formula;
import static withers.ingest.xlsx.Workbooks.row;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.zip.CRC32;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import withers.ingest.xlsx.Workbooks;

/**
 * Makes the inputs of {@code fixtures/dirty} that no editor of texts can: spreadsheets and
 * archives. They are the same bytes each time, and small. All animals and people are invented.
 */
final class BinaryFixtures {

  private static final String[] HEADER = {
    "No", "Chip", "Animal", "Kind", "Seen", "Client", "Phone"
  };
  private static final String CSV =
      "No,Chip,Animal,Kind,Seen,Client,Phone\n"
          + "P-1,999010000000017,Pip,dog,2031-01-05,Ada Example,(212) 555-0100\n"
          + "P-2,999010000000018,Kelp,cat,2031-01-06,,\n";
  private static final double SEEN = 47_853; // 2031-01-05
  private static final String DAY = "yyyy-mm-dd";

  private final Map<String, byte[]> files = new TreeMap<>();

  /** The inputs, by the name of their fixture's folder and their own. */
  static Map<String, byte[]> all() {
    BinaryFixtures fixtures = new BinaryFixtures();
    fixtures.cells();
    fixtures.sheets();
    fixtures.otherDocuments();
    fixtures.packed();
    fixtures.damagedArchives();
    fixtures.sets();
    return fixtures.files;
  }

  private void cells() {
    sheet(
        "xlsx-plain",
        sheet ->
            row(sheet, "P-1", "999010000000017", "Pip", "dog", "2031-01-05", "Ada Example", ""));
    sheet(
        "xlsx-numeric-numbers",
        sheet -> {
          row(sheet, "P-1", 999010000000017.0, "Pip", "dog", "", "", 2125550100.0);
          row(sheet, "P-2", 999010000000000.0, "Kelp", "cat", "", "", "");
          row(sheet, "P-3", 9990100000000170.0, "Tar", "dog", "", "", "");
          row(sheet, "P-4", 99901000000001.75, "Oakum", "cat", "", "", "");
          row(sheet, 5, 999010000000019.0, "Rudder", "cat", "", "", "");
        });
    sheet(
        "xlsx-days-from-1900",
        sheet -> {
          row(sheet, "P-1", "999010000000017", "first", "dog", formatted(1, DAY), "", "");
          row(sheet, "P-2", "999010000000018", "never", "dog", formatted(60, DAY), "", "");
          row(sheet, "P-3", "999010000000019", "61", "dog", formatted(61, "d/m/yy"), "", "");
          row(
              sheet,
              "P-4",
              "999010000000020",
              "hour",
              "dog",
              formatted(SEEN + .75, "d.m.yyyy h:mm"),
              "",
              "");
          row(sheet, "P-5", "999010000000021", "empty", "dog", formatted(0, DAY), "", "");
          row(sheet, "P-6", "999010000000022", "bare", "dog", SEEN, "", "");
          row(sheet, "P-7", "999010000000023", "minus", "dog", formatted(-1, DAY), "", "");
        });
    files.put("xlsx-days-from-1904/input.xlsx", from1904());
    sheet(
        "xlsx-formulas",
        sheet -> {
          row(
              sheet,
              formula("\"P-\"&1"),
              formula("\"999\"&\"010000000017\""),
              "Pip",
              "dog",
              "2031-01-05",
              "",
              "");
          row(
              sheet,
              "P-2",
              formula("999010000000000+18"),
              "Kelp",
              "cat",
              "2031-01-06",
              formula("UPPER(\"ada\")"),
              "");
        });
    files.put(
        "xlsx-formula-without-value/input.xlsx",
        Workbooks.edited(
            patients(
                sheet ->
                    row(sheet, "P-1", formula("999010000000000+17"), "Pip", "dog", "", "", "")),
            "xl/worksheets/sheet1.xml",
            "<v>9.99010000000017E14</v>",
            ""));
    sheet(
        "xlsx-errors",
        sheet -> {
          row(sheet, "P-1", error(FormulaError.REF), "Pip", "dog", "2031-01-05", "", "");
          row(sheet, "P-2", "999010000000018", error(FormulaError.NA), "cat", "2031-01-06", "", "");
          row(
              sheet,
              "P-3",
              "999010000000019",
              "Tar",
              "dog",
              "2031-01-07",
              "",
              "",
              error(FormulaError.DIV0));
        });
    sheet(
        "xlsx-merged-cells",
        sheet -> {
          row(sheet, "P-1", "999010000000017", "Pip", "dog", "2031-01-05", "Ada Example", "");
          row(sheet, "P-2", "999010000000018", "Kelp", "cat", "2031-01-06");
          sheet.addMergedRegion(new CellRangeAddress(1, 2, 5, 5));
        });
    sheet(
        "xlsx-blank-and-hidden-rows",
        sheet -> {
          Workbooks.rowAt(sheet, 3, "P-1", "999010000000017", "Pip", "dog", "2031-01-05", "", "");
          Workbooks.rowAt(sheet, 6, "P-2", "999010000000018", "Kelp", "cat", "2031-01-06", "", "")
              .setZeroHeight(true);
        });
    sheet(
        "xlsx-apostrophes",
        sheet -> row(sheet, "'P-1", "'999010000000017", "Pip", "dog", "2031-01-05", "", ""));
    sheet(
        "xlsx-cells-beside-the-table",
        sheet ->
            row(sheet, "P-1", "999010000000017", "Pip", "dog", "2031-01-05", "", "", "", "a note"));
    files.put(
        "xlsx-title-rows/input.xlsx",
        Workbooks.ofSheet(
            sheet -> {
              row(sheet, "Patients of the practice");
              row(sheet, "as of", formatted(SEEN, DAY));
              Workbooks.rowAt(sheet, 4, (Object[]) HEADER);
              row(sheet, "P-1", "999010000000017", "Pip", "dog", "2031-01-05", "", "");
              row(sheet, (Object[]) HEADER);
              row(sheet, "P-2", "999010000000018", "Kelp", "cat", "2031-01-06", "", "");
            }));
  }

  private static byte[] from1904() {
    // Some programs write 1 for true, others the word; both are XML Schema's.
    return Workbooks.edited(
        Workbooks.of(
            book -> {
              book.getCTWorkbook().getWorkbookPr().setDate1904(true);
              XSSFSheet sheet = book.createSheet("Patients");
              row(sheet, (Object[]) HEADER);
              row(sheet, "P-1", "999010000000017", "first", "dog", formatted(0, DAY), "", "");
              row(sheet, "P-2", "999010000000018", "60", "dog", formatted(60, DAY), "", "");
              row(
                  sheet,
                  "P-3",
                  "999010000000019",
                  "Pip",
                  "dog",
                  formatted(SEEN - 1462, DAY),
                  "",
                  "");
            }),
        "xl/workbook.xml",
        "date1904=\"true\"",
        "date1904=\"1\"");
  }

  private void sheets() {
    files.put("xlsx-several-sheets/input.xlsx", twoSheets());
    files.put("xlsx-named-sheet/input.xlsx", twoSheets());
    files.put("xlsx-no-such-sheet/input.xlsx", twoSheets());
    files.put(
        "xlsx-one-sheet-with-rows/input.xlsx",
        Workbooks.of(
            book -> {
              book.createSheet("Empty");
              row(book.createSheet("Lists"), "dog");
              book.setSheetHidden(1, true);
              XSSFSheet sheet = book.createSheet("Patients");
              row(sheet, (Object[]) HEADER);
              row(sheet, "P-1", "999010000000017", "Pip", "dog", "2031-01-05", "", "");
            }));
    files.put("xlsx-no-rows/input.xlsx", Workbooks.ofSheet(sheet -> {}));
  }

  private static byte[] twoSheets() {
    return Workbooks.of(
        book -> {
          XSSFSheet north = book.createSheet("North");
          row(north, (Object[]) HEADER);
          row(north, "P-1", "999010000000017", "Pip", "dog", "2031-01-05", "", "");
          XSSFSheet south = book.createSheet("South");
          row(south, (Object[]) HEADER);
          row(south, "P-2", "999010000000018", "Kelp", "cat", "2031-01-06", "", "");
        });
  }

  private void otherDocuments() {
    files.put(
        "xlsx-in-gzip/input.xlsx.gz",
        gzip(
            patients(
                sheet ->
                    row(sheet, "P-1", 999010000000017.0, "Pip", "dog", "2031-01-05", "", ""))));
    byte[] compound = new byte[1536];
    ByteBuffer.wrap(compound).putLong(0xD0CF11E0A1B11AE1L);
    files.put("xls-old/input.xls", compound);
    byte[] encrypted = compound.clone();
    byte[] name = "EncryptedPackage".getBytes(StandardCharsets.UTF_16LE);
    System.arraycopy(name, 0, encrypted, 1024 + 128, name.length);
    files.put("xlsx-with-password/input.xlsx", encrypted);
    Map<String, byte[]> openDocument = new LinkedHashMap<>();
    openDocument.put(
        "mimetype",
        "application/vnd.oasis.opendocument.spreadsheet".getBytes(StandardCharsets.UTF_8));
    openDocument.put("content.xml", "<office:document-content/>".getBytes(StandardCharsets.UTF_8));
    files.put("ods/input.ods", Workbooks.zip(openDocument));
    byte[] workbook = patients(sheet -> row(sheet, "P-1", "999010000000017"));
    files.put(
        "xlsx-damaged/input.xlsx",
        Workbooks.edited(workbook, "xl/worksheets/sheet1.xml", "</sheetData>", "</sheetdata>"));
    files.put("xlsx-cut-off/input.xlsx", Arrays.copyOf(workbook, workbook.length / 2));
    files.put(
        "xlsx-with-entities/input.xlsx",
        Workbooks.edited(
            workbook,
            "xl/sharedStrings.xml",
            "<sst",
            "<!DOCTYPE sst [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;\">]><sst"));
  }

  private void packed() {
    files.put("gzip/input.csv.gz", gzip(text(CSV)));
    files.put("zip/input.zip", Workbooks.zip(Map.of("input.csv", text(CSV))));
    Map<String, byte[]> two = new LinkedHashMap<>();
    two.put("january/", new byte[0]);
    two.put("january/north.csv", text(CSV));
    two.put(
        "../../south.csv",
        text(CSV.replace("P-", "S-").replace("99901000000001", "99901000000002")));
    two.put("__MACOSX/._north.csv", new byte[] {0, 5, 22, 7});
    files.put("zip-of-several-files/input.zip", Workbooks.zip(two));
    files.put("gzip-named-csv/input.csv", gzip(text(CSV)));
  }

  private void damagedArchives() {
    byte[] gzip = gzip(text(CSV));
    files.put("gzip-cut-off/input.csv.gz", Arrays.copyOf(gzip, gzip.length - 30));
    byte[] changed = gzip.clone();
    changed[60] ^= 1;
    files.put("gzip-damaged/input.csv.gz", changed);
    files.put(
        "zip-in-zip/input.zip",
        Workbooks.zip(Map.of("inner.zip", Workbooks.zip(Map.of("a.csv", text(CSV))))));
    files.put("zip-of-nothing/input.zip", Workbooks.zip(Map.of()));
    byte[] password = Workbooks.zip(Map.of("input.csv", text(CSV)));
    String bytes = new String(password, StandardCharsets.ISO_8859_1);
    password[bytes.indexOf("PK\1\2") + 8] |= 1;
    password[bytes.indexOf("PK\3\4") + 6] |= 1;
    files.put("zip-with-password/input.zip", password);
  }

  private void sets() {
    String movements =
        "Movement,Animal,Date,What,From\nM-1,A-1,2031-01-05,stray,C-1\nM-2,A-2,2031-01-06,stray,\n";
    String animals =
        "Animal ID,Microchip,Name\nA-1,999010000000017,Pip\nA-2,999010000000018,Kelp\n";
    String people = "Person ID,Name,Phone\nC-1,Ada Example,(212) 555-0100\nC-2,Bela Sample,\n";
    put("set", movements, animals, people);
    put("set-without-people", movements, animals, "");
    put(
        "set-dangling-reference",
        movements,
        "Animal ID,Microchip,Name\nA-1,999010000000017,Pip\n",
        people);
    put("set-dangling-reference-as-empty", movements.replace("C-1", "C-9"), animals, people);
    put(
        "set-key-twice",
        movements,
        animals,
        people + "C-2,Bela Sample,\nC-1,Cyd Sample,(212) 555-0101\n");
    put("set-joined-column-missing", movements, animals.replace("Microchip", "Chip"), people);
    put("set-ragged-rows", movements + "M-3,A-1\n", animals.replace("Kelp", "Kelp,x"), people);
    Map<String, byte[]> archive = new LinkedHashMap<>();
    archive.put("input-animals.csv", text(animals));
    archive.put("input-movements.csv", text(movements));
    archive.put("input-people.csv", text(people));
    files.put("set-in-zip/input.zip", Workbooks.zip(archive));
    files.put(
        "set-of-sheets/input.xlsx",
        Workbooks.of(
            book -> {
              fill(book.createSheet("Movements"), movements);
              fill(book.createSheet("Animals"), animals);
              fill(book.createSheet("People"), people);
            }));
  }

  private static void fill(XSSFSheet sheet, String csv) {
    csv.lines().forEach(line -> row(sheet, (Object[]) line.split(",", -1)));
  }

  private void put(String folder, String movements, String animals, String people) {
    files.put(folder + "/input-movements.csv", text(movements));
    files.put(folder + "/input-animals.csv", text(animals));
    if (!people.isEmpty()) {
      files.put(folder + "/input-people.csv", text(people));
    }
  }

  private void sheet(String folder, Consumer<XSSFSheet> rows) {
    files.put(folder + "/input.xlsx", patients(rows));
  }

  private static byte[] patients(Consumer<XSSFSheet> rows) {
    return Workbooks.ofSheet(
        sheet -> {
          row(sheet, (Object[]) HEADER);
          rows.accept(sheet);
        });
  }

  private static Consumer<org.apache.poi.ss.usermodel.Cell> error(FormulaError error) {
    return cell -> cell.setCellErrorValue(error.getCode());
  }

  private static byte[] text(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** One stored block (RFC 1951, 3.2.4) in one member (RFC 1952): no library packs it otherwise. */
  private static byte[] gzip(byte[] bytes) {
    CRC32 crc = new CRC32();
    crc.update(bytes);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(new byte[] {0x1F, (byte) 0x8B, 8, 0, 0, 0, 0, 0, 0, (byte) 255});
    out.write(1);
    out.writeBytes(
        little(4).putShort((short) bytes.length).putShort((short) ~bytes.length).array());
    out.writeBytes(bytes);
    out.writeBytes(little(8).putInt((int) crc.getValue()).putInt(bytes.length).array());
    return out.toByteArray();
  }

  private static ByteBuffer little(int length) {
    return ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
  }
}
