package withers.ingest.profile;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import withers.source.SourceKind;
import withers.yaml.Fields;

/** Reads which columns hold what, for one kind of source. */
final class ColumnsReader {

  private final KindColumns kind;
  private final Map<ColumnName, String> fixed;
  private final boolean hasAnimalId;

  ColumnsReader(SourceKind kind, Map<ColumnName, String> fixed, boolean hasAnimalId) {
    this.kind = KindColumns.of(kind);
    this.fixed = fixed;
    this.hasAnimalId = hasAnimalId;
  }

  ColumnMap read(Fields fields) {
    Map<ColumnName, String> headers = new EnumMap<>(ColumnName.class);
    for (ColumnName column : kind.columns()) {
      fields.optionalText(column.word()).ifPresent(header -> headers.put(column, header));
    }
    Map<PartyName, PartyColumns> parties = new EnumMap<>(PartyName.class);
    for (PartyName party : kind.parties()) {
      fields.map(party.word(), PartyReader::read).ifPresent(read -> parties.put(party, read));
    }
    ColumnMap columns = new ColumnMap(headers, fixed, parties);
    check(fields, columns);
    return columns;
  }

  private void check(Fields fields, ColumnMap columns) {
    kind.needed().stream()
        .filter(column -> !columns.has(column) && !isReplaced(column))
        .forEach(column -> fields.require(column.word()));
    kind.neededParties().forEach(party -> fields.require(party.word()));
    boolean hasGroup = kind.groups().stream().anyMatch(g -> g.stream().allMatch(columns::has));
    if (!kind.groups().isEmpty() && !hasGroup) {
      throw new IllegalArgumentException(
          "Expected columns for %s, but found none of these pairs whole".formatted(groups()));
    }
  }

  /** Where the source's own id of the animal is known, a number is not needed in the same file. */
  private boolean isReplaced(ColumnName column) {
    return column == ColumnName.CHIP && hasAnimalId;
  }

  private String groups() {
    return kind.groups().stream().map(ColumnsReader::group).collect(Collectors.joining(", or "));
  }

  private static String group(List<ColumnName> group) {
    return group.stream().map(ColumnName::word).collect(Collectors.joining(" and "));
  }
}
