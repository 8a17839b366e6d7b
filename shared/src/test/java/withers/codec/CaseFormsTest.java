package withers.codec;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.cases.Anchor;
import withers.cases.CaseEvent;
import withers.cases.CaseEvent.Step;
import withers.cases.CaseKey;
import withers.chip.ChipNumber;
import withers.id.OrganisationId;
import withers.id.SourceId;

/** Steps of follow-ups are read as every version wrote them. The approved forms are for good. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CaseFormsTest {

  private static final Json<CaseEvent> JSON = new Json<>(WireTable.CASES);
  private static final CaseEvent OF_AN_ANIMAL =
      step("contact-behind", new Anchor.Chip(ChipNumber.parse("999000000112233")));
  private static final CaseEvent OF_A_RECORD =
      step("number-damaged", new Anchor.Source(new SourceId("cliff-clinic")));

  @Test
  void version_1_hung_on_a_number_and_is_lifted() {
    assertThat(JSON.read(Approved.text("case/case.json"))).isEqualTo(OF_AN_ANIMAL);
    assertThat(decoded("case/case.hex")).containsExactly(OF_AN_ANIMAL, OF_AN_ANIMAL);
  }

  @Test
  void version_2_hangs_on_a_chip_or_on_a_source() {
    assertThat(JSON.write(OF_AN_ANIMAL)).isEqualTo(Approved.text("case/case-2-chip.json"));
    assertThat(JSON.write(OF_A_RECORD)).isEqualTo(Approved.text("case/case-2-source.json"));
    assertThat(JSON.read(Approved.text("case/case-2-chip.json"))).isEqualTo(OF_AN_ANIMAL);
    assertThat(JSON.read(Approved.text("case/case-2-source.json"))).isEqualTo(OF_A_RECORD);
  }

  @Test
  void a_chunk_of_version_2_has_its_approved_bytes() {
    List<CaseEvent> both = List.of(OF_AN_ANIMAL, OF_A_RECORD);
    assertThat(HexFormat.of().formatHex(Streams.CASES.codec().encode(both)))
        .isEqualTo(Approved.text("case/case-2.hex"));
    assertThat(decoded("case/case-2.hex")).isEqualTo(both);
  }

  private static CaseEvent step(String rule, Anchor anchor) {
    CaseKey key = new CaseKey(rule, anchor, new OrganisationId("cliff"), "P-1001");
    return new CaseEvent(key, Step.OPENED, LocalDate.of(2024, 3, 1), "2024-03-01-0123456789ab");
  }

  private static List<CaseEvent> decoded(String approved) {
    List<CaseEvent> events = new ArrayList<>();
    Streams.CASES.codec().decode(HexFormat.of().parseHex(Approved.text(approved)), events::add);
    return events;
  }
}
