package withers.codec;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.audit.AuditEvent;
import withers.audit.Confidential;
import withers.audit.Disclosed;
import withers.audit.Erased;
import withers.audit.Readmitted;
import withers.audit.TidiedUp;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.contact.ContactVault.RecordName;
import withers.id.RecordKey;
import withers.id.SourceId;

/** What was disclosed and erased is read as it was written. The approved forms are for good. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class AuditFormsTest {

  private static final Json<AuditEvent> JSON = new Json<>(WireTable.AUDIT);
  private static final ContactRef PERSON = ContactRef.parse("01:00112233445566778899aabbccddeeff");
  private static final AuditEvent DISCLOSED =
      new Disclosed(
          LocalDate.of(2024, 3, 1),
          "privacy officer",
          "asked for a copy",
          "about",
          List.of(PERSON));
  private static final AuditEvent ERASED =
      new Erased(
          LocalDate.of(2024, 3, 2),
          "privacy officer",
          "asked to be forgotten",
          List.of(PERSON),
          List.of(new RecordName(new SourceId("cliff-clinic"), new RecordKey("P-1001"))));

  private static final AuditEvent CONFIDENTIAL =
      new Confidential(
          LocalDate.of(2024, 3, 3),
          "case worker",
          "shelter from abuse",
          List.of(PERSON),
          List.of(new RecordName(new SourceId("cliff-clinic"), new RecordKey("P-1001"))),
          List.of(ChipNumber.iso(999, 1008L)),
          false);

  private static final AuditEvent TIDIED_UP =
      new TidiedUp(
          LocalDate.of(2024, 3, 4), "coordinator", "policy", List.of("quarantine 3", "runs 1"));

  private static final AuditEvent READMITTED =
      new Readmitted(
          LocalDate.of(2024, 3, 5),
          "privacy officer",
          "a client again",
          List.of(PERSON),
          List.of(new RecordName(new SourceId("cliff-clinic"), new RecordKey("P-1001"))));

  @Test
  void a_return_has_its_approved_forms() {
    assertThat(JSON.write(READMITTED)).isEqualTo(Approved.text("audit/readmitted.json"));
    assertThat(JSON.read(Approved.text("audit/readmitted.json"))).isEqualTo(READMITTED);
    assertThat(HexFormat.of().formatHex(Streams.AUDIT.codec().encode(List.of(READMITTED))))
        .isEqualTo(Approved.text("audit/readmitted.hex"));
    List<AuditEvent> read = new ArrayList<>();
    Streams.AUDIT
        .codec()
        .decode(HexFormat.of().parseHex(Approved.text("audit/readmitted.hex")), read::add);
    assertThat(read).containsExactly(READMITTED);
  }

  @Test
  void a_deletion_by_policy_has_its_approved_forms() {
    assertThat(JSON.write(TIDIED_UP)).isEqualTo(Approved.text("audit/tidied-up.json"));
    assertThat(JSON.read(Approved.text("audit/tidied-up.json"))).isEqualTo(TIDIED_UP);
    assertThat(HexFormat.of().formatHex(Streams.AUDIT.codec().encode(List.of(TIDIED_UP))))
        .isEqualTo(Approved.text("audit/tidied-up.hex"));
  }

  @Test
  void a_mark_has_its_approved_forms() {
    assertThat(JSON.write(CONFIDENTIAL)).isEqualTo(Approved.text("audit/confidential.json"));
    assertThat(JSON.read(Approved.text("audit/confidential.json"))).isEqualTo(CONFIDENTIAL);
    assertThat(HexFormat.of().formatHex(Streams.AUDIT.codec().encode(List.of(CONFIDENTIAL))))
        .isEqualTo(Approved.text("audit/confidential.hex"));
    List<AuditEvent> read = new ArrayList<>();
    Streams.AUDIT
        .codec()
        .decode(HexFormat.of().parseHex(Approved.text("audit/confidential.hex")), read::add);
    assertThat(read).containsExactly(CONFIDENTIAL);
  }

  @Test
  void JSON_has_its_approved_form() {
    assertThat(JSON.write(DISCLOSED)).isEqualTo(Approved.text("audit/disclosed.json"));
    assertThat(JSON.write(ERASED)).isEqualTo(Approved.text("audit/erased.json"));
    assertThat(JSON.read(Approved.text("audit/disclosed.json"))).isEqualTo(DISCLOSED);
    assertThat(JSON.read(Approved.text("audit/erased.json"))).isEqualTo(ERASED);
  }

  @Test
  void a_chunk_has_its_approved_bytes() {
    List<AuditEvent> both = List.of(DISCLOSED, ERASED);
    assertThat(HexFormat.of().formatHex(Streams.AUDIT.codec().encode(both)))
        .isEqualTo(Approved.text("audit/audit.hex"));
    List<AuditEvent> read = new ArrayList<>();
    byte[] chunk = HexFormat.of().parseHex(Approved.text("audit/audit.hex"));
    Streams.AUDIT.codec().decode(chunk, read::add);
    assertThat(read).isEqualTo(both);
  }
}
