package withers.ingest.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.cases.Anchor;
import withers.cases.Answered;
import withers.cases.CaseEvent;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.cases.Channel;
import withers.cases.Outcome;
import withers.cases.Reference;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.id.ImportId;
import withers.id.OrganisationId;
import withers.ingest.cli.TestWorkspace.Said;
import withers.log.Batch;
import withers.log.SampleMarkers;
import withers.source.OwnSources;

/** Lists' sheets that come back. Two follow-ups of a clinic, and one of a shelter, were opened. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class AnswersCommandTest {

  private static final String RUN = "2031-01-31-0123456789ab";
  private static final LocalDate LISTED = LocalDate.of(2031, 1, 31);
  private static final CaseKey ONE = key("999010000000001", "harbour-clinic");
  private static final CaseKey TWO = key("999010000000002", "harbour-clinic");
  private static final CaseKey SHELTERS = key("999010000000001", "dune-shelter");
  private static final String LIST = "harbour-clinic " + RUN;
  private static final String HEADER =
      "Reference,What came of it,On which day,By whom (role),Ask again on,Client best reached by,List\n";

  @TempDir Path folder;
  private TestWorkspace workspace;

  private static CaseKey key(String chip, String actor) {
    return new CaseKey(
        "contact-behind", new Anchor.Chip(ChipNumber.parse(chip)), new OrganisationId(actor), "P1");
  }

  @BeforeEach
  void three_follow_ups() {
    workspace = TestWorkspace.create(folder.resolve("coast")).withClinic();
    workspace.ingest();
    List<CaseEvent> opened =
        Stream.of(ONE, TWO, SHELTERS)
            .<CaseEvent>map(key -> new CaseStep(key, CaseStep.Step.OPENED, LISTED, RUN))
            .toList();
    ImportId id = new ImportId(UUID.randomUUID());
    workspace.log(
        log -> {
          log.append(new Batch<>(Streams.CASES, 0, id, 0, opened));
          log.commit(SampleMarkers.next(log, id, OwnSources.FOLLOW_UPS, LISTED, opened.size()));
          return id;
        });
  }

  private static String row(CaseKey key, String answers) {
    return "%s,%s,%s\n".formatted(Reference.of(key), answers, LIST);
  }

  private Said back(String name, String text) {
    workspace.write(name, text);
    return workspace.ingest(workspace.root().resolve(name).toString());
  }

  private List<Answered> answers() {
    return workspace.log(
        log -> {
          List<Answered> answers = new ArrayList<>();
          log.snapshot()
              .<CaseEvent>replay(
                  Streams.CASES,
                  0,
                  (event, marker) -> {
                    if (event instanceof Answered answered) {
                      answers.add(answered);
                    }
                  });
          return answers.stream().sorted().toList();
        });
  }

  private static Answered answer(CaseKey key, LocalDate day, Outcome outcome) {
    return new Answered(
        key,
        day,
        Optional.of(LISTED),
        Optional.of(outcome),
        Optional.empty(),
        Optional.empty(),
        "front desk");
  }

  private static LocalDate february(int day) {
    return LocalDate.of(2031, 2, day);
  }

  @Test
  void what_was_filled_in_becomes_facts_with_author_and_day_and_the_rest_is_counted() {
    Said said =
        back(
            "back.csv",
            HEADER
                + row(ONE, "The client was reached and will do it,2031-02-05,front desk,,")
                + row(TWO, ",,,,"));

    assertThat(said)
        .isEqualTo(
            new Said(
                0,
                "answers in back.csv: read 1 = 0 unchanged + 1 applied + 0 rejected; 1 row without an answer\n",
                ""));
    assertThat(answers()).containsExactly(answer(ONE, february(5), Outcome.WILL_DO));
  }

  @Test
  void columns_may_be_moved_and_added_and_words_typed_otherwise() {
    back(
        "back.csv",
        "Our file;by whom (role);REFERENCE;What  came of it;On which day\n"
            + "A-1;front desk;%s;the animal has DIED;5.2.2031\n"
                .formatted(Reference.of(ONE).toLowerCase(java.util.Locale.ROOT).replace("-", "")));

    assertThat(answers())
        .containsExactly(
            new Answered(
                ONE,
                february(5),
                Optional.empty(),
                Optional.of(Outcome.DIED),
                Optional.empty(),
                Optional.empty(),
                "front desk"));
  }

  @Test
  void a_workbook_is_read_whatever_else_it_holds() throws IOException {
    workspace.write("back.xlsx", workbook());

    Said said = workspace.ingest(workspace.root().resolve("back.xlsx").toString());

    assertThat(said.out()).startsWith("answers in back.xlsx: read 1 = 0 unchanged + 1 applied");
    assertThat(answers()).containsExactly(answer(ONE, february(5), Outcome.NOT_REACHED));
  }

  /** Made by Apache POI, with a sheet before it and the day as a day. */
  private static byte[] workbook() throws IOException {
    try (XSSFWorkbook workbook = new XSSFWorkbook();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
      workbook.createSheet("Please read").createRow(0).createCell(0).setCellValue("Hello");
      XSSFSheet sheet = workbook.createSheet("Follow-ups");
      String[] header = HEADER.strip().split(",");
      Row first = sheet.createRow(0);
      for (int i = 0; i < header.length; i++) {
        first.createCell(i).setCellValue(header[i]);
      }
      Row row = sheet.createRow(1);
      row.createCell(0).setCellValue(Reference.of(ONE));
      row.createCell(1).setCellValue("The client could not be reached");
      CellStyle day = workbook.createCellStyle();
      day.setDataFormat(workbook.createDataFormat().getFormat("yyyy-mm-dd"));
      row.createCell(2).setCellValue(february(5));
      row.getCell(2).setCellStyle(day);
      row.createCell(3).setCellValue("front desk");
      row.createCell(6).setCellValue(LIST);
      workbook.write(bytes);
      return bytes.toByteArray();
    }
  }

  @Test
  void a_packed_sheet_is_read_too() throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
      gzip.write(
          (HEADER + row(ONE, "The animal has died,2031-02-05,front desk,,"))
              .getBytes(StandardCharsets.UTF_8));
    }
    workspace.write("back.csv.gz", packed.toByteArray());

    workspace.ingest(workspace.root().resolve("back.csv.gz").toString());

    assertThat(answers()).containsExactly(answer(ONE, february(5), Outcome.DIED));
  }

  @Test
  void the_same_sheet_again_is_not_read_and_the_same_answers_in_another_change_nothing() {
    String answer = row(ONE, "The animal has died,2031-02-05,front desk,,");
    back("back.csv", HEADER + answer);
    List<Answered> before = answers();

    assertThat(back("back.csv", HEADER + answer).out())
        .isEqualTo(
            "answers: 1 file unchanged since read, last on 2031-03-01 01:30 (UTC); not read again\n");
    assertThat(back("again.csv", HEADER + answer + answer + row(TWO, ",,,,")).out())
        .isEqualTo(
            "answers in again.csv: read 2 = 2 unchanged + 0 applied + 0 rejected; 1 row without an answer; nothing new\n");
    assertThat(answers()).isEqualTo(before);
  }

  @Test
  void in_the_inbox_it_is_known_by_its_header_even_in_a_source_s_folder() throws IOException {
    Files.createDirectories(workspace.root().resolve("inbox/harbour-clinic"));
    workspace.write(
        "inbox/harbour-clinic/harbour-2031-02-20.csv",
        HEADER + row(ONE, "The animal has died,2031-02-05,front desk,,"));

    assertThat(workspace.ingest("--settled").out()).startsWith("answers in harbour-2031-02-20.csv");
    assertThat(answers()).hasSize(1);
    assertThat(workspace.ingest("--settled").out()).startsWith("answers: 1 file unchanged");
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      nullValues = "-",
      value = {
        // outcome, day, again, channel; what is heard, of which day
        "\"\", 2031-02-05, \"\", \"\", TRIED, 2031-02-05",
        "\"\", \"\", 2031-02-20, \"\", -, 2031-01-31",
        "\"\", 2031-02-05, \"\", Not at all, -, 2031-02-05",
        "\"\", 2031-02-05, 2031-02-20, \"\", TRIED, 2031-02-05",
        "It is not ours to do, \"\", \"\", \"\", NOT_OURS, 2031-01-31",
        "It is not ours to do, 5 Feb 2031, \"\", \"\", NOT_OURS, 2031-02-05",
        "It is not ours to do, 2/13/2031, \"\", \"\", NOT_OURS, 2031-02-13"
      })
  void half_filled_rows_say_what_they_say(
      String outcome, String day, String again, String channel, Outcome heard, LocalDate of) {
    back("back.csv", HEADER + row(ONE, String.join(",", outcome, day, "", again, channel)));

    assertThat(answers())
        .containsExactly(
            new Answered(
                ONE,
                of,
                Optional.of(LISTED),
                Optional.ofNullable(heard),
                Optional.of(again).filter(text -> !text.isEmpty()).map(LocalDate::parse),
                Optional.of(channel)
                    .filter(text -> !text.isEmpty())
                    .map(text -> Channel.NOT_AT_ALL),
                ""));
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      value = {
        // reference, outcome, day, role, again, channel, list; column, code
        "2222-2222, Tried, 2031-02-05, \"\", \"\", \"\", LIST, Reference, FOLLOW_UP_UNKNOWN",
        "\"\", The animal has died, \"\", \"\", \"\", \"\", LIST, Reference, FOLLOW_UP_UNKNOWN",
        "ONE, The animal is dead, \"\", \"\", \"\", \"\", LIST, What came of it, WORD_UNKNOWN",
        "ONE, \"\", 2031-02-05, \"\", \"\", By pigeon, LIST, Client best reached by, WORD_UNKNOWN",
        "ONE, \"\", 3/4/2031, \"\", \"\", \"\", LIST, On which day, DAY_REFUSED",
        "ONE, \"\", 2031-03-02, \"\", \"\", \"\", LIST, On which day, DAY_REFUSED",
        "ONE, \"\", 2030-02-05, \"\", \"\", \"\", LIST, On which day, DAY_REFUSED",
        "ONE, \"\", 2031-02-05, \"\", 2031-02-05, \"\", LIST, Ask again on, DAY_REFUSED",
        "ONE, \"\", 2031-02-05, \"\", 2301-02-20, \"\", LIST, Ask again on, DAY_REFUSED",
        "ONE, \"\", 2031-02-05, 212 555 0100, \"\", \"\", LIST, By whom (role), ROLE_REFUSED",
        "ONE, The animal has died, \"\", \"\", \"\", \"\", \"\", On which day, DAY_MISSING",
        "ONE, The animal has died, \"\", \"\", \"\", \"\", dune-shelter x, List, OTHER_LIST"
      })
  void what_cannot_be_taken_goes_to_quarantine_with_the_reason_and_the_rest_is_read(
      String reference,
      String outcome,
      String day,
      String role,
      String again,
      String channel,
      String list,
      String column,
      String code)
      throws IOException {
    String bad =
        String.join(
            ",",
            reference.equals("ONE") ? Reference.of(ONE) : reference,
            outcome,
            day,
            role,
            again,
            channel,
            list.equals("LIST") ? LIST : list);
    Said said =
        back(
            "back.csv",
            HEADER + bad + "\n" + row(TWO, "The animal has died,2031-02-05,front desk,,"));

    assertThat(said.exitCode()).isEqualTo(1);
    assertThat(said.out()).startsWith("answers in back.csv: read 2 = 0 unchanged + 1 applied + 1 ");
    assertThat(answers()).containsExactly(answer(TWO, february(5), Outcome.DIED));
    assertThat(Files.readAllLines(onlyQuarantine()).get(1))
        .startsWith("answers,'2031-03-01,back.csv,2,%s,%s,".formatted(column, code))
        .contains("Expected ");
  }

  private Path onlyQuarantine() throws IOException {
    try (Stream<Path> files = Files.list(workspace.open().paths().quarantine())) {
      List<Path> all = files.toList();
      assertThat(all).hasSize(1);
      return all.get(0);
    }
  }

  @Test
  void a_row_put_right_in_its_quarantine_file_is_taken() throws IOException {
    back("back.csv", HEADER + row(ONE, "The animal is dead,2031-02-05,front desk,,"));
    Path quarantine = onlyQuarantine();
    Files.writeString(
        quarantine,
        Files.readString(quarantine).replace(",The animal is dead,", ",The animal has died,"));

    Said said = workspace.ingest(quarantine.toString());

    assertThat(said.exitCode()).isZero();
    assertThat(answers()).containsExactly(answer(ONE, february(5), Outcome.DIED));
  }

  @Test
  void what_a_killed_program_left_is_not_there_and_the_sheet_is_taken_once() {
    Answered said = answer(ONE, february(5), Outcome.DIED);
    ImportId killed = new ImportId(UUID.randomUUID());
    workspace.log(
        log -> {
          log.append(new Batch<>(Streams.CASES, 0, killed, 0, List.<CaseEvent>of(said)));
          return killed;
        });
    assertThat(answers()).isEmpty();

    Said taken = back("back.csv", HEADER + row(ONE, "The animal has died,2031-02-05,front desk,,"));

    assertThat(taken.out()).contains("1 applied");
    assertThat(answers()).containsExactly(said);
  }

  @Test
  void the_export_date_dates_answers_that_state_no_day() {
    workspace.write("back.csv", HEADER + row(ONE, "The animal has died,,front desk,,"));

    workspace.ingest(workspace.root().resolve("back.csv").toString(), "--export-date=2031-02-07");

    assertThat(answers()).containsExactly(answer(ONE, february(7), Outcome.DIED));
  }

  @Test
  void a_file_with_references_alone_is_no_sheet_of_answers() {
    assertThat(back("back.csv", "Reference,Your own notes\n" + Reference.of(ONE) + ",x\n").err())
        .contains("Expected a file that a profile recognises");
  }
}
