package withers.ingest.translate;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.PartyName;
import withers.ingest.profile.SourceProfile;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.rows.Typed;

/** Where everything that a profile names stands in the rows of one file. */
final class Layout {

  private final Header header;
  private final SourceProfile profile;
  private final List<String> used;
  private final Map<ColumnName, Cell> columns = new EnumMap<>(ColumnName.class);
  private final Map<PartyName, PartyCells> parties = new EnumMap<>(PartyName.class);
  private final Map<ColumnName, Words> words = new EnumMap<>(ColumnName.class);
  private final List<Cell> key;
  private final Cell animalId;

  /**
   * @throws withers.source.InputRefusedException when the header lacks a column
   */
  Layout(SourceProfile profile, Header header) {
    this.header = header;
    this.profile = profile;
    this.used = profile.headers();
    header.require(used);
    for (ColumnName column : ColumnName.values()) {
      columns.put(column, cell(Optional.ofNullable(profile.columns().headers().get(column))));
      words.put(column, new Words(column, profile.values()));
    }
    profile
        .columns()
        .parties()
        .forEach((name, party) -> parties.put(name, new PartyCells(party, this::find)));
    this.key = profile.key().stream().map(this::find).toList();
    this.animalId = cell(profile.animalId());
  }

  private Cell cell(Optional<String> name) {
    return name.map(this::find).orElse(Cell::nothing);
  }

  private Cell find(String name) {
    int place = header.place(name);
    return row -> row.cell(place);
  }

  int width() {
    return header.size();
  }

  String text(ColumnName column, Row row) {
    return column(column).in(row);
  }

  private Cell column(ColumnName column) {
    return columns.getOrDefault(column, Cell::nothing);
  }

  Words words(ColumnName column) {
    return words.computeIfAbsent(column, c -> new Words(c, profile.values()));
  }

  /** Our word for a column that is the same in every row. */
  Optional<String> fixed(ColumnName column) {
    return Optional.ofNullable(profile.columns().fixed().get(column));
  }

  Optional<PartyCells> party(PartyName name) {
    return Optional.ofNullable(parties.get(name));
  }

  /** What the row holds in a column beside its text. */
  Typed typed(ColumnName column, Row row) {
    return row.isTyped()
        ? Optional.ofNullable(profile.columns().headers().get(column))
            .map(name -> typed(name, row))
            .orElse(Typed.TEXT)
        : Typed.TEXT;
  }

  /** The first column that the profile uses and this row can't tell; empty when it tells all. */
  Optional<String> unreadable(Row row) {
    return row.isTyped()
        ? used.stream().filter(name -> row.typed(header.place(name)).isUnreadable()).findFirst()
        : Optional.empty();
  }

  Typed typed(String name, Row row) {
    return row.typed(header.place(name));
  }

  /** Whether a row of another width reaches as far as the key's columns. */
  boolean hasKey(Row row) {
    return profile.key().stream().allMatch(name -> header.place(name) < row.size());
  }

  List<Cell> key() {
    return key;
  }

  String animalId(Row row) {
    return animalId.in(row);
  }

  /** The file's own name for a column, for messages. */
  String headerOf(ColumnName column) {
    return profile.columns().headers().getOrDefault(column, column.word());
  }
}
