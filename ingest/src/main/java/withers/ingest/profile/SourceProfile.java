package withers.ingest.profile;

import java.nio.file.FileSystems;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.ingest.change.Disappearance;
import withers.source.SourceDescription;
import withers.source.SourceKind;

/**
 * How one source's exports are recognised, read and understood.
 *
 * @param files patterns of the names of its files, with {@code *} and {@code ?}
 * @param key headers of the columns that together name a record
 * @param animalId header of the column with the source's own id of the animal
 * @param joins files whose rows say more about the rows of its exports, in the order in which they
 *     are joined
 * @param digest of the profile's text, lower-case hexadecimal: another digest, another reading
 */
public record SourceProfile(
    SourceId id,
    OrganisationId organisation,
    SourceKind kind,
    List<String> files,
    FileFormat format,
    ExportDateRule exportDate,
    ExtentRule extent,
    Disappearance disappearance,
    CoverageRule coverage,
    Limits limits,
    List<String> key,
    Optional<String> animalId,
    ColumnMap columns,
    ValueMaps values,
    List<Join> joins,
    String digest) {

  private static final String GZIP = ".gz";

  public SourceProfile {
    files = List.copyOf(files);
    key = List.copyOf(key);
    joins = List.copyOf(joins);
  }

  /**
   * Whether a file of this name is an export of this source; {@code .gz} at its end may be more.
   */
  public boolean recognises(String fileName) {
    return matchesAny(files, fileName) || !joinsOf(fileName).isEmpty();
  }

  /** The joins whose file one of this name is. Where there are any, it is no export itself. */
  public List<Join> joinsOf(String fileName) {
    return joins.stream().filter(join -> matchesAny(join.files(), fileName)).toList();
  }

  /** Every header that the profile names for columns of rows. */
  public List<String> headers() {
    List<String> headers = new ArrayList<>(key);
    animalId.ifPresent(headers::add);
    for (ColumnName column : ColumnName.values()) {
      Optional.ofNullable(columns.headers().get(column)).ifPresent(headers::add);
    }
    for (PartyName party : PartyName.values()) {
      columns.party(party).map(PartyColumns::headers).ifPresent(headers::addAll);
    }
    return headers;
  }

  /** Of {@link #headers}, those of the export's own files, with those that joins refer by. */
  public List<String> ownHeaders() {
    return Stream.concat(headers().stream(), joins.stream().map(Join::on))
        .filter(header -> joins.stream().noneMatch(join -> join.owns(header)))
        .distinct()
        .toList();
  }

  private static boolean matchesAny(List<String> patterns, String fileName) {
    return patterns.stream()
        .anyMatch(pattern -> matches(pattern, fileName) || matches(pattern, ungzipped(fileName)));
  }

  private static String ungzipped(String fileName) {
    return fileName.endsWith(GZIP)
        ? fileName.substring(0, fileName.length() - GZIP.length())
        : fileName;
  }

  private static boolean matches(String pattern, String fileName) {
    return FileSystems.getDefault().getPathMatcher("glob:" + pattern).matches(Path.of(fileName));
  }

  /** The source as a marker tells it, for an export of this date. */
  public SourceDescription describe(LocalDate exportDate) {
    return new SourceDescription(id, organisation, kind, coverage.at(exportDate));
  }
}
