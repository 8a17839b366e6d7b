package withers.codec;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.id.ImportId;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.log.ImportMarker;
import withers.log.Tally;
import withers.source.Coverage;
import withers.source.Extent;
import withers.source.SourceDescription;
import withers.source.SourceKind;

/** Released forms are read and written byte for byte as they were approved. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ApprovedFormsTest {

  @TestFactory
  Stream<DynamicTest> each_fact_has_its_approved_json() {
    return same(WireTable.FACTS, Samples.FACTS, ChipEvent::fact);
  }

  @TestFactory
  Stream<DynamicTest> each_subject_has_its_approved_json() {
    return same(WireTable.SUBJECTS, Samples.SUBJECTS, ChipEvent::subject);
  }

  @TestFactory
  Stream<DynamicTest> each_party_has_its_approved_json() {
    return same(
        WireTable.PARTIES, Samples.PARTIES, event -> ((Fact.Attended) event.fact()).client());
  }

  @Test
  void a_chunk_of_all_shapes_has_its_approved_bytes() {
    assertThat(decoded("chunk-2.hex")).isEqualTo(Samples.all());
    assertThat(HexFormat.of().formatHex(Streams.CHIPS.codec().encode(Samples.all())))
        .isEqualTo(Approved.text("chunk-2.hex"));
  }

  @Test
  void a_chunk_of_version_1_of_all_shapes_is_still_read() {
    assertThat(decoded("chunk.hex")).isEqualTo(Samples.ofVersion1());
  }

  @Test
  void an_answer_that_did_not_tell_who_had_asked_is_still_read() {
    ChipEvent lookedUp =
        Samples.FACTS.stream()
            .filter(event -> event.fact() instanceof Fact.LookedUp)
            .findFirst()
            .orElseThrow();
    assertThat(EventJson.read(Approved.text("fact/looked-up.json"))).isEqualTo(lookedUp);
  }

  @Test
  void an_answer_tells_who_had_asked() {
    ChipEvent asked = Samples.SINCE_VERSION_2.get(0);
    assertThat(EventJson.write(asked)).isEqualTo(Approved.text("fact/looked-up-2-by.json"));
    assertThat(EventJson.read(Approved.text("fact/looked-up-2-by.json"))).isEqualTo(asked);
  }

  private static List<ChipEvent> decoded(String approved) {
    List<ChipEvent> events = new ArrayList<>();
    Streams.CHIPS.codec().decode(HexFormat.of().parseHex(Approved.text(approved)), events::add);
    return events;
  }

  @Test
  void a_source_s_marker_has_its_approved_json() {
    ImportMarker marker = marker(new Extent.Full());
    assertThat(MarkerJson.write(marker)).isEqualTo(Approved.text("marker/full.json"));
    assertThat(MarkerJson.read(Approved.text("marker/full.json"))).isEqualTo(marker);
  }

  @TestFactory
  Stream<DynamicTest> each_extent_has_its_approved_json() {
    Map<String, Extent> extents =
        Map.of(
            "full", new Extent.Full(),
            "window", new Extent.Window(LocalDate.of(2024, 1, 1), LocalDate.of(2024, 1, 31)),
            "changes", new Extent.Changes());
    assertThat(extents.keySet())
        .isEqualTo(
            MarkerTable.EXTENTS.shapes().stream().map(Shape::name).collect(Collectors.toSet()));
    return extents.entrySet().stream()
        .map(e -> DynamicTest.dynamicTest(e.getKey(), () -> sameMarker(e.getKey(), e.getValue())));
  }

  @Test
  void ids_names_versions_and_fields_are_as_approved() {
    assertThat(WireTableDump.text()).isEqualTo(Approved.text("table.txt"));
  }

  private static void sameMarker(String name, Extent extent) {
    String approved = Approved.text("marker/" + name + ".json");
    assertThat(MarkerJson.write(marker(extent))).isEqualTo(approved);
    assertThat(MarkerJson.read(approved)).isEqualTo(marker(extent));
  }

  private static <T> Stream<DynamicTest> same(
      Family<T> family, List<ChipEvent> samples, Function<ChipEvent, T> part) {
    Map<String, ChipEvent> byShape =
        samples.stream()
            .collect(Collectors.toMap(e -> family.shapeOf(part.apply(e)).name(), e -> e));
    return family.shapes().stream()
        .map(shape -> DynamicTest.dynamicTest(shape.name(), () -> same(family, shape, byShape)));
  }

  private static void same(Family<?> family, Shape<?> shape, Map<String, ChipEvent> samples) {
    String version = shape.version() == 1 ? "" : "-" + shape.version();
    String approved = Approved.text(family.name() + "/" + shape.name() + version + ".json");
    assertThat(samples).containsKey(shape.name());
    assertThat(EventJson.read(approved)).isEqualTo(samples.get(shape.name()));
    assertThat(EventJson.write(samples.get(shape.name()))).isEqualTo(approved);
  }

  static ImportMarker marker(Extent extent) {
    SourceId source = new SourceId("cliff-clinic");
    NumberRange range =
        new NumberRange(ChipNumber.parse("999000000001000"), ChipNumber.parse("999000000001099"));
    Coverage coverage =
        new Coverage(
            Coverage.Reach.ACCOUNT,
            List.of(range),
            Optional.of(LocalDate.of(2024, 2, 20)),
            Set.of("phone", "email"));
    return new ImportMarker(
        new ImportId(UUID.fromString("00000000-0000-4000-8000-000000000002")),
        Optional.of(new ImportId(UUID.fromString("00000000-0000-4000-8000-000000000001"))),
        source,
        Optional.of(
            new SourceDescription(
                source, new OrganisationId("cliff"), SourceKind.CLINIC_PATIENTS, coverage)),
        LocalDate.of(2024, 3, 1),
        extent,
        List.of(new ImportMarker.FileRead("patients.csv", "ab".repeat(32), 12, "cd".repeat(32))),
        new Tally(12, 5, 6, 1, 2, 9),
        new TreeSet<>(Set.of(LocalDate.of(2024, 3, 1))),
        new TreeSet<>(Set.of(LocalDate.of(2024, 2, 1), LocalDate.of(2024, 1, 1))),
        Instant.parse("2024-03-01T06:00:00.5Z"));
  }
}
