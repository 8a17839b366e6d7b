package withers.ingest.profile;

import java.nio.file.FileSystems;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.ingest.change.Disappearance;
import withers.organisation.Directory;
import withers.source.SourceKind;
import withers.yaml.Fields;
import withers.yaml.Nearest;
import withers.yaml.Problems;

/** Reads one profile. */
final class ProfileReader {

  private static final OrganisationId NOBODY = new OrganisationId("nobody");
  private final Problems problems;
  private final Directory directory;

  ProfileReader(Problems problems, Directory directory) {
    this.problems = problems;
    this.directory = directory;
  }

  SourceProfile read(SourceId id, String digest, Fields fields) {
    OrganisationId organisation = organisation(fields);
    SourceKind kind = fields.choice("kind", SourceKind.class);
    OpenQuestions.refuse(fields, problems);
    fields.require("files");
    fields.require("key");
    ExtentRule extent = ExtentReader.extent(fields);
    ValuesReader words = new ValuesReader(kind, problems);
    Map<ColumnName, String> fixed = fields.map("fixed", words::fixed).orElse(Map.of());
    Optional<String> animalId = fields.optionalText("animal-id");
    ColumnsReader columns = new ColumnsReader(kind, fixed, animalId.isPresent());
    JoinsReader joins = new JoinsReader(problems);
    SourceProfile profile =
        new SourceProfile(
            id,
            organisation,
            kind,
            fields.list("files", ProfileReader::pattern),
            fields.map("format", FormatReader::format).orElse(FormatReader.defaultFormat()),
            fields.map("export-date", FormatReader::exportDate, FormatReader.onCommand()),
            extent,
            fields.choice("disappearance", Disappearance.NO_LONGER_LISTED),
            fields.map("coverage", CoverageReader::coverage, CoverageReader.nothingCovered()),
            CoverageReader.limits(fields, extent),
            fields.texts("key"),
            animalId,
            fields.map("columns", columns::read, noColumns()),
            fields.map("values", words::values).orElseGet(() -> new ValueMaps(Map.of())),
            joins.read(fields),
            digest);
    joins.check(profile);
    return profile;
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

  static String pattern(String text) {
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

  private static ColumnMap noColumns() {
    return new ColumnMap(Map.of(), Map.of(), Map.of());
  }
}
