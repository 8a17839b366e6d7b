package withers.report.xlsx;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.contact;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import withers.finding.FindingKind;
import withers.report.Coast;
import withers.report.FindingStory;
import withers.report.Samples;
import withers.report.csv.ListCsv;
import withers.report.list.FollowUpList;
import withers.report.list.FollowUpLists;
import withers.report.text.Texts;

/**
 * What a spreadsheet that people use makes of the workbook: LibreOffice Calc opens it without a
 * window and writes what it shows as CSV. Compared by the headings, so that columns may come and
 * go.
 */
@EnabledIfSystemProperty(
    named = "withers.libreoffice",
    matches = "true",
    disabledReason = "asked for by -Plibreoffice, where LibreOffice Calc is installed")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SheetInLibreOfficeTest {

  /**
   * The filter of the help page "Filter Options for CSV": comma, quote, UTF-8, from line 1, cells
   * as shown, every sheet into a file of its own.
   */
  private static final String FILTER =
      "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1";

  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();

  @TempDir private Path folder;

  private final Texts texts = Texts.in(Locale.UK);

  @Test
  void shows_every_cell_as_the_list_for_programs_has_it() throws Exception {
    compare(new Samples().lists(texts).get(1));
  }

  @Test
  void takes_nothing_that_a_record_says_for_a_formula_a_number_or_a_day() throws Exception {
    Coast coast = new Coast();
    List<String> nasty =
        List.of("=1+1", "+1-1", "-2+3", "@SUM(1)", "0012", "1/2", "9.85E+14", "TRUE", "'=2*3");
    FindingStory[] stories =
        IntStream.range(0, nasty.size())
            .mapToObj(i -> story(coast, 2000 + i, nasty.get(i)))
            .toArray(FindingStory[]::new);

    List<CSVRecord> shown =
        compare(FollowUpLists.of(Coast.run(stories), Coast.DIRECTORY, coast.vault, texts).get(0));

    assertThat(shown)
        .map(row -> row.get("Your record"))
        .contains("'=1+1", "'+1-1", "'@SUM(1)", "0012", "1/2", "9.85E+14", "TRUE");
    assertThat(shown).map(row -> row.get("Phone")).containsOnly("'+1 212 555 0151");
  }

  private static FindingStory story(Coast coast, int chip, String said) {
    return FindingStory.of(FindingKind.UNREGISTERED, CLINIC, chip)
        .named(said)
        .record(said)
        .with(coast.person(CLINIC, contact(said, "+1 212 555 0151")));
  }

  /** Compares each row and column that the list for programs has, and returns what was shown. */
  private List<CSVRecord> compare(FollowUpList list) throws Exception {
    List<CSVRecord> ours = rows(new ListCsv(texts).of(list));
    List<CSVRecord> shown = shown(new ListWorkbook(texts).of(list));

    assertThat(shown).hasSameSizeAs(ours);
    for (int row = 0; row < ours.size(); row++) {
      assertThat(shown.get(row).toMap()).containsAllEntriesOf(ours.get(row).toMap());
    }
    return shown;
  }

  /** The first sheet, without the empty rows below it. */
  private List<CSVRecord> shown(byte[] workbook) throws IOException, InterruptedException {
    Files.write(folder.resolve("list.xlsx"), workbook);
    Process office =
        new ProcessBuilder(
                "soffice",
                "--headless",
                "-env:UserInstallation=" + folder.resolve("profile").toUri(),
                "--convert-to",
                FILTER,
                "--outdir",
                folder.toString(),
                folder.resolve("list.xlsx").toString())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("office.log").toFile())
            .start();
    boolean hasEnded = office.waitFor(3, TimeUnit.MINUTES);
    office.destroyForcibly();
    String said = Files.readString(folder.resolve("office.log"));
    assertThat(hasEnded).as(said).isTrue();
    Path sheet = folder.resolve("list-%s.csv".formatted(texts.say("sheet.list")));
    assertThat(sheet).as(said).exists();
    return rows(Files.readAllBytes(sheet)).stream()
        .filter(row -> row.stream().anyMatch(cell -> !cell.isEmpty()))
        .toList();
  }

  private static List<CSVRecord> rows(byte[] csv) throws IOException {
    int mark = csv[0] == (byte) 0xEF ? 3 : 0;
    var bytes = new ByteArrayInputStream(csv, mark, csv.length - mark);
    return FORMAT.parse(new InputStreamReader(bytes, StandardCharsets.UTF_8)).getRecords();
  }
}
