package withers.codec;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withers.cases.Anchor;
import withers.cases.Answered;
import withers.cases.CaseEvent;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.cases.CaseStep.Step;
import withers.cases.Channel;
import withers.cases.Outcome;
import withers.cases.Settled;
import withers.cases.Settlement;
import withers.cases.Settlement.Relation;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.fact.Party;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * Steps of follow-ups, and what people settled, are read as every version wrote them. The approved
 * forms are for good.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CaseFormsTest {

  private static final Json<CaseEvent> JSON = new Json<>(WireTable.CASES);
  private static final CaseStep OF_AN_ANIMAL =
      step("contact-behind", new Anchor.Chip(ChipNumber.parse("999000000112233")));
  private static final CaseStep OF_A_RECORD =
      step("number-damaged", new Anchor.Source(new SourceId("cliff-clinic")));
  private static final ContactRef ONE = ContactRef.parse("01:00112233445566778899aabbccddeeff");
  private static final ContactRef OTHER = ContactRef.parse("01:ffeeddccbbaa99887766554433221100");
  private static final ChipNumber CHIP = ChipNumber.parse("999000000112233");
  private static final SourceId CLINIC = new SourceId("cliff-clinic");

  /** One of each shape. */
  private static final List<Settled> SETTLED =
      List.of(
          settled(
              1,
              new Settlement.RightAsItIs(
                  new Party.Contact(ONE, Optional.empty()),
                  List.of(
                      new Settlement.Registration(
                          CHIP, new OrganisationId("beacon"), new Party.Unstated())),
                  List.of("phone"))),
          settled(
              2,
              new Settlement.OfPeople(
                  new Settlement.Client(ONE, CLINIC, Optional.of("C-7")),
                  new Settlement.Client(OTHER, new SourceId("beacon"), Optional.empty()),
                  Relation.SAME_HOUSEHOLD)),
          settled(
              3,
              new Settlement.OneAnimal(
                  CHIP, List.of("00112233445566778899aabbccddeeff", "ff".repeat(16)))),
          settled(4, new Settlement.MistakenNumber(CHIP, CLINIC, new RecordKey("P-1002"))),
          settled(5, new Settlement.TakenBack()));

  private static final Settled SINCE = settled(7, new Settlement.ForLater());

  private static final Answered ANSWERED =
      new Answered(
          OF_AN_ANIMAL.key(),
          LocalDate.of(2024, 3, 12),
          Optional.of(LocalDate.of(2024, 2, 29)),
          Optional.of(Outcome.NOT_REACHED),
          Optional.of(LocalDate.of(2024, 4, 2)),
          Optional.of(Channel.EMAIL),
          "front desk");
  private static final Answered OF_LITTLE =
      new Answered(
          OF_A_RECORD.key(),
          LocalDate.of(2024, 3, 1),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.of(Channel.NOT_AT_ALL),
          "");

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

  @TestFactory
  Stream<DynamicTest> each_settlement_has_its_approved_json() {
    Map<String, Settled> byShape =
        Stream.concat(SETTLED.stream(), Stream.of(SINCE))
            .collect(Collectors.toMap(s -> WireTable.SETTLEMENTS.shapeOf(s.says()).name(), s -> s));
    return WireTable.SETTLEMENTS.shapes().stream()
        .map(
            shape ->
                DynamicTest.dynamicTest(
                    shape.name(), () -> same(shape.name(), byShape.get(shape.name()))));
  }

  private static void same(String name, Settled settled) {
    assertThat(JSON.write(settled)).isEqualTo(Approved.text("case/settled-" + name + ".json"));
    assertThat(JSON.read(Approved.text("case/settled-" + name + ".json"))).isEqualTo(settled);
  }

  @Test
  void a_chunk_of_settlements_has_its_approved_bytes() {
    assertThat(HexFormat.of().formatHex(Streams.CASES.codec().encode(List.copyOf(SETTLED))))
        .isEqualTo(Approved.text("case/settled.hex"));
    assertThat(decoded("case/settled.hex")).isEqualTo(SETTLED);
  }

  @Test
  void answers_have_their_approved_forms() {
    assertThat(JSON.write(ANSWERED)).isEqualTo(Approved.text("case/answered.json"));
    assertThat(JSON.read(Approved.text("case/answered.json"))).isEqualTo(ANSWERED);
    assertThat(JSON.write(OF_LITTLE)).isEqualTo(Approved.text("case/answered-of-little.json"));
    assertThat(JSON.read(Approved.text("case/answered-of-little.json"))).isEqualTo(OF_LITTLE);
  }

  @Test
  void a_chunk_of_answers_and_of_what_rests_has_its_approved_bytes() {
    List<CaseEvent> all = List.of(ANSWERED, OF_LITTLE, SINCE);
    assertThat(HexFormat.of().formatHex(Streams.CASES.codec().encode(all)))
        .isEqualTo(Approved.text("case/answered.hex"));
    assertThat(decoded("case/answered.hex")).isEqualTo(all);
  }

  private static Settled settled(int number, Settlement says) {
    return new Settled(
        number,
        OF_AN_ANIMAL.key(),
        LocalDate.of(2024, 3, 4),
        LocalDate.of(2024, 3, 1),
        Optional.of(LocalDate.of(2025, 3, 1)).filter(day -> number % 2 == 1),
        "front desk",
        "asked both, they share a flat",
        says);
  }

  private static CaseStep step(String rule, Anchor anchor) {
    CaseKey key = new CaseKey(rule, anchor, new OrganisationId("cliff"), "P-1001");
    return new CaseStep(key, Step.OPENED, LocalDate.of(2024, 3, 1), "2024-03-01-0123456789ab");
  }

  private static List<CaseEvent> decoded(String approved) {
    List<CaseEvent> events = new ArrayList<>();
    Streams.CASES.codec().decode(HexFormat.of().parseHex(Approved.text(approved)), events::add);
    return events;
  }
}
