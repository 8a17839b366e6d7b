package withers.codec.receipt;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.ingest.ImportReport;
import withers.ingest.receipt.FileState;
import withers.ingest.receipt.Receipt;
import withers.log.Tally;
import withers.source.Extent;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ReceiptJsonTest {

  private static final Receipt RECEIPT =
      new Receipt(
          "harbour-clinic/patients \"2031\".zip",
          new FileState(741, Instant.parse("2031-02-28T17:00:00.123456789Z"), "(dev=1,ino=2)"),
          Instant.parse("2031-03-01T01:30:00Z"),
          Instant.parse("2031-03-01T01:30:07Z"),
          List.of(
              reading(Optional.of("x.csv"), new Extent.Full()),
              reading(Optional.empty(), window())),
          List.of("Expected a file, but found none"));

  private static Receipt.Reading reading(Optional<String> quarantine, Extent extent) {
    return new Receipt.Reading(
        new SourceId("harbour-clinic"),
        LocalDate.of(2031, 2, 28),
        Receipt.extent(extent),
        "patients.zip/patients.csv",
        "abc",
        12,
        "def",
        ImportReport.Result.NOTHING_NEW,
        quarantine.map(name -> new ImportId(new UUID(1, 2))),
        new Tally(10, 1, 2, 7, 3, 4),
        quarantine);
  }

  private static Extent window() {
    return new Extent.Window(LocalDate.of(2031, 2, 1), LocalDate.of(2031, 2, 28));
  }

  @Test
  void what_was_written_is_read() {
    assertThat(ReceiptJson.read(ReceiptJson.write(RECEIPT))).contains(RECEIPT);
  }

  @Test
  void a_window_is_written_with_its_days() {
    assertThat(ReceiptJson.write(RECEIPT))
        .contains("\"extent\" : \"window 2031-02-01..2031-02-28\"");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "{",
        "[]",
        "null",
        "{\"version\":2}",
        "{\"version\":1}",
        "{\"version\":1,\"modified\":\"yesterday\"}",
        "\0\0\0"
      })
  void anything_else_is_no_receipt(String text) {
    assertThat(ReceiptJson.read(text)).isEmpty();
  }

  @Test
  void a_receipt_that_was_cut_off_anywhere_is_none() {
    String text = ReceiptJson.write(RECEIPT).strip();
    for (int end = 0; end < text.length(); end++) {
      assertThat(ReceiptJson.read(text.substring(0, end))).as("cut off at %d", end).isEmpty();
    }
  }
}
