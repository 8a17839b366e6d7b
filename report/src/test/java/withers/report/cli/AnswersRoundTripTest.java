package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.report.Coast;
import withers.report.table.Column;

/** A list goes out, is filled in with another program (Apache POI), and comes back. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class AnswersRoundTripTest {

  private static final String NUMBER = "999000000001003";

  @TempDir private Path folder;

  @BeforeEach
  void a_dog_that_changed_hands() throws IOException {
    Coast.writeWorkspace(folder);
    Coast.writePatients(folder);
    Coast.writeRegister(folder);
    Coast.write(
        folder,
        "inbox/patients-2026-02-27.csv",
        """
        No,Chip,Seen,Client,Phone
        P-19,999000000001003,2025-06-01,Mara Linden,+1 212 555 0151
        """);
    Coast.write(
        folder,
        "inbox/register-2026-02-28.csv",
        """
        No,Chip,Since,Contact,Phone
        T-10,999000000001003,2022-05-01,Jonas Abel,+1 212 555 0161
        """);
    assertThat(withers("run").code()).isZero();
  }

  private CommandRun withers(String command, String... words) {
    return CommandRun.of(
        Stream.concat(Stream.of(command, "--workspace", folder.toString()), Arrays.stream(words))
            .toArray(String[]::new));
  }

  private Path list(String name) throws IOException {
    String run = Files.readString(folder.resolve("runs/latest")).strip();
    try (Stream<Path> files = Files.walk(folder.resolve("lists").resolve(run))) {
      return files.filter(file -> file.endsWith(name)).findFirst().orElseThrow();
    }
  }

  /** The XLSX of the latest run's only list, filled in and put into the inbox. */
  private void filledIn(Map<Column, String> answers) throws IOException {
    try (InputStream in = Files.newInputStream(list("list.xlsx"));
        XSSFWorkbook workbook = new XSSFWorkbook(in)) {
      XSSFSheet sheet = workbook.getSheetAt(0);
      Row row = sheet.getRow(1);
      answers.forEach((column, text) -> fill(row, column, text));
      try (OutputStream out = Files.newOutputStream(folder.resolve("inbox/back.xlsx"))) {
        workbook.write(out);
      }
    }
  }

  /** Days are typed as days: the cell's format shows them as such. */
  private static void fill(Row row, Column column, String text) {
    if (column == Column.ON || column == Column.AGAIN) {
      row.getCell(column.ordinal()).setCellValue(LocalDate.parse(text));
    } else {
      row.getCell(column.ordinal()).setCellValue(text);
    }
  }

  private String page() throws IOException {
    return Files.readString(list("list.html")).replace('\u00a0', ' ');
  }

  @Test
  void answered_it_is_listed_apart_and_counted_and_explained() throws IOException {
    filledIn(
        Map.of(
            Column.OUTCOME,
            "The client was reached and will do it",
            Column.ON,
            "2026-03-01",
            Column.BY,
            "front desk"));

    CommandRun ingested = withers("ingest", "--settled");
    CommandRun run = withers("run");

    assertThat(ingested.err()).isEmpty();
    assertThat(ingested.out())
        .contains(
            "answers in back.xlsx: read 1 = 0 unchanged + 1 applied + 0 rejected; 0 rows without an answer");
    assertThat(run.code()).isZero();
    assertThat(page())
        .contains("Answered or put off")
        .contains(
            "“The client was reached and will do it” on 1 March 2026, by front desk. It comes up again on 15 April 2026,")
        .doesNotContain("Mara");
    assertThat(list("overview.html"))
        .content()
        .contains("Of these, answered and waiting for records</th><td class=\"n\">1<");
    assertThat(withers("reconcile", "--json").out())
        .contains("\"answered\":1,\"snoozed\":0,\"closedAfterAnswers\":0");
    assertThat(withers("explain", NUMBER).out())
        .contains("Its life so far:\n  2026-03-01 opened by run 2026-03-01-")
        .contains(
            "  2026-03-01 answered by front desk: \"The client was reached and will do it\"\n")
        .contains("it was answered, and comes up again on 2026-04-15");
  }

  @Test
  void not_reached_it_stays_on_the_list_with_its_attempts_and_a_wish() throws IOException {
    filledIn(
        Map.of(
            Column.OUTCOME,
            "The client could not be reached",
            Column.ON,
            "2026-03-01",
            Column.CHANNEL,
            "E-mail"));
    withers("ingest", "--settled");

    withers("run");

    assertThat(page())
        .contains("Tried once without reaching the client, last on 1 March 2026.")
        .contains("The client is best reached by: E-mail")
        .contains("Mara Linden");
  }

  @Test
  void a_client_who_wants_no_contact_is_named_and_not_called() throws IOException {
    filledIn(Map.of(Column.CHANNEL, "Not at all"));
    withers("ingest", "--settled");

    withers("run");

    assertThat(page())
        .contains("This client has asked you not to contact them.")
        .contains("Do not call, write or mail Mara Linden: they have asked for that.")
        .contains("Ask your coordinator who else can reach them, and pass this on.")
        .doesNotContain("tel:+12125550151");
  }

  @Test
  void put_off_by_the_coordinator_it_is_on_no_list_until_the_day() throws IOException {
    CommandRun put =
        withers(
            "snooze",
            NUMBER,
            "--until",
            "2026-05-01",
            "--by",
            "coordinator",
            "--reason",
            "abroad till May");

    assertThat(put.err()).isEmpty();
    assertThat(put.out())
        .matches("Put off: [0-9A-Z-]{9}, contact-behind of " + NUMBER + ", until 2026-05-01\\.\n");
    withers("run");
    assertThat(page())
        .contains("“abroad till May” on 1 March 2026, by coordinator. It comes up again on 1 May");
    assertThat(withers("explain", NUMBER).out())
        .contains("2026-03-01 put off until 2026-05-01, by coordinator: \"abroad till May\"");
    assertThat(withers("settle", NUMBER, "--withdraw", "--by", "x", "--reason", "home").code())
        .isZero();
    withers("run");
    assertThat(page()).doesNotContain("Answered or put off").contains("Mara Linden");
  }

  @Test
  void what_can_t_be_put_off_is_refused_with_what_to_do() {
    assertThat(snooze(NUMBER, "2026-03-01"))
        .isEqualTo(
            "Expected --until with a day after today, 2026-03-01, and within a year, but found 2026-03-01");
    assertThat(snooze(NUMBER, "2036-03-01")).startsWith("Expected --until with a day after today");
    assertThat(snooze("ZZZZ-ZZZZ", "2026-05-01")).startsWith("Expected a follow-up that run ");
  }

  private String snooze(String follow, String until) {
    CommandRun run =
        withers("snooze", follow, "--until", until, "--by", "coordinator", "--reason", "away");
    assertThat(run.code()).isEqualTo(2);
    return run.err().lines().findFirst().orElseThrow().replaceFirst("^withers: ", "");
  }
}
