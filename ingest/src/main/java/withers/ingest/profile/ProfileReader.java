package withers.ingest.profile;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import withers.chip.RangeNotation;
import withers.fact.Slot;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.ingest.change.Disappearance;
import withers.organisation.Directory;
import withers.source.Coverage;
import withers.source.SourceKind;
import withers.yaml.Choices;
import withers.yaml.Fields;
import withers.yaml.Nearest;
import withers.yaml.Problems;

/** Reads one profile. */
final class ProfileReader {

  private static final OrganisationId NOBODY = new OrganisationId("nobody");
  private static final int LONGEST_LAG = 366;
  private static final int LARGEST_FLOOR = 100_000_000;
  private static final int DEFAULT_REJECTS = 5;
  private static final Set<Slot> WINDOW_SLOTS =
      EnumSet.of(
          Slot.SUPPLY,
          Slot.IMPLANT,
          Slot.VISIT,
          Slot.INTAKE,
          Slot.OUTCOME,
          Slot.MOVEMENT,
          Slot.SALE,
          Slot.REGISTRATION,
          Slot.REPORT);

  private final Problems problems;
  private final Directory directory;

  ProfileReader(Problems problems, Directory directory) {
    this.problems = problems;
    this.directory = directory;
  }

  SourceProfile read(SourceId id, String digest, Fields fields) {
    OrganisationId organisation = organisation(fields);
    SourceKind kind = fields.choice("kind", SourceKind.class);
    fields.require("files");
    fields.require("key");
    ExtentRule extent = extent(fields);
    ValuesReader words = new ValuesReader(kind, problems);
    Map<ColumnName, String> fixed = fields.map("fixed", words::fixed).orElse(Map.of());
    Optional<String> animalId = fields.optionalText("animal-id");
    ColumnsReader columns = new ColumnsReader(kind, fixed, animalId.isPresent());
    return new SourceProfile(
        id,
        organisation,
        kind,
        fields.list("files", ProfileReader::pattern),
        fields.map("format", ProfileReader::format).orElse(defaultFormat()),
        fields.map("export-date", ProfileReader::exportDate, onCommand()),
        extent,
        fields.choice("disappearance", Disappearance.NO_LONGER_LISTED),
        fields.map("coverage", ProfileReader::coverage, nothingCovered()),
        limits(fields, extent),
        fields.texts("key"),
        animalId,
        fields.map("columns", columns::read, noColumns()),
        fields.map("values", words::values).orElseGet(() -> new ValueMaps(Map.of())),
        digest);
  }

  private OrganisationId organisation(Fields fields) {
    OrganisationId id = fields.value("organisation", OrganisationId::new, NOBODY);
    if (!id.equals(NOBODY) && directory.find(id).isEmpty()) {
      List<String> ids = directory.all().stream().map(one -> one.id().value()).toList();
      fields.problem(
          "organisation",
          "Expected the id of an organisation in organisations.yaml, but found \"%s\""
              .formatted(id),
          Nearest.to(id.value(), ids)
              .map("did you mean \"%s\"?"::formatted)
              .orElse("add it there"));
    }
    return id;
  }

  private static String pattern(String text) {
    try {
      FileSystems.getDefault().getPathMatcher("glob:" + text);
      return text;
    } catch (IllegalArgumentException wrong) {
      throw new IllegalArgumentException(
          "Expected a pattern of file names such as harbour-*.csv, but found \"%s\""
              .formatted(text),
          wrong);
    }
  }

  private static FileFormat defaultFormat() {
    return new FileFormat(',', StandardCharsets.UTF_8, DatePattern.of("yyyy-MM-dd"));
  }

  private static FileFormat format(Fields fields) {
    return new FileFormat(
        fields.optionalValue("delimiter", ProfileReader::delimiter).orElse(','),
        fields.optionalValue("charset", ProfileReader::charset).orElse(StandardCharsets.UTF_8),
        fields.optionalValue("date", DatePattern::of).orElse(DatePattern.of("yyyy-MM-dd")));
  }

  private static char delimiter(String text) {
    return switch (text) {
      case "comma", "," -> ',';
      case "semicolon", ";" -> ';';
      case "tab", "\t" -> '\t';
      case "bar", "|" -> '|';
      default ->
          throw new IllegalArgumentException(
              "Expected one of comma, semicolon, tab, bar, but found \"%s\"".formatted(text));
    };
  }

  private static Charset charset(String text) {
    try {
      return Charset.forName(text);
    } catch (IllegalArgumentException unknown) {
      throw new IllegalArgumentException(
          "Expected a character set such as UTF-8 or windows-1252, but found \"%s\""
              .formatted(text),
          unknown);
    }
  }

  private static ExportDateRule onCommand() {
    return new ExportDateRule(ExportDateRule.From.COMMAND, "");
  }

  private static ExportDateRule exportDate(Fields fields) {
    ExportDateRule.From from = fields.choice("from", ExportDateRule.From.class);
    return switch (from) {
      case FILE_NAME ->
          new ExportDateRule(
              from,
              fields
                  .optionalValue("pattern", DatePattern::of)
                  .map(DatePattern::toString)
                  .orElse("yyyy-MM-dd"));
      case COLUMN -> new ExportDateRule(from, fields.text("column"));
      case COMMAND -> onCommand();
    };
  }

  private static ExtentRule extent(Fields fields) {
    ExtentRule.Kind kind = fields.choice("extent", ExtentRule.Kind.class);
    Optional<ExtentRule.WindowRule> window = fields.map("window", ProfileReader::window);
    if (kind == ExtentRule.Kind.WINDOW) {
      fields.require("window");
    } else if (fields.has("window")) {
      fields.problem(
          "window",
          "Expected \"window\" only with \"extent: window\", but found it",
          "take it out");
    }
    return new ExtentRule(kind, window);
  }

  private static ExtentRule.WindowRule window(Fields fields) {
    return new ExtentRule.WindowRule(
        fields.value("by", ProfileReader::windowSlot, Slot.VISIT),
        fields.choice("bounds", ExtentRule.Bounds.class));
  }

  private static Slot windowSlot(String text) {
    return WINDOW_SLOTS.stream()
        .filter(slot -> Choices.name(slot).equals(text))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "Expected one of %s, but found \"%s\""
                        .formatted(
                            String.join(", ", WINDOW_SLOTS.stream().map(Choices::name).toList()),
                            text)));
  }

  private static CoverageRule nothingCovered() {
    return new CoverageRule(Coverage.Reach.ACCOUNT, List.of(), 0, Set.of());
  }

  private static CoverageRule coverage(Fields fields) {
    return new CoverageRule(
        fields.choice("reach", Coverage.Reach.class),
        fields.list("ranges", RangeNotation::read),
        fields.wholeNumber("lag-days", 0, 0, LONGEST_LAG),
        new LinkedHashSet<>(fields.texts("filled")));
  }

  private static Limits limits(Fields fields, ExtentRule extent) {
    int floor = extent.kind() == ExtentRule.Kind.FULL ? 1 : 0;
    return fields
        .map("limits", limits -> limits(limits, floor))
        .orElse(new Limits(DEFAULT_REJECTS, floor));
  }

  private static Limits limits(Fields fields, int defaultFloor) {
    return new Limits(
        fields.optionalValue("rejects", ProfileReader::percent).orElse(DEFAULT_REJECTS),
        fields.wholeNumber("floor", defaultFloor, 0, LARGEST_FLOOR));
  }

  private static int percent(String text) {
    String number = text.endsWith("%") ? text.substring(0, text.length() - 1).strip() : text;
    return withers.yaml.Values.wholeNumber(number, 0, 100);
  }

  private static ColumnMap noColumns() {
    return new ColumnMap(Map.of(), Map.of(), Map.of());
  }
}
