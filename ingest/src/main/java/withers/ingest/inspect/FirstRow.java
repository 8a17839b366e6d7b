package withers.ingest.inspect;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.chip.ChipNumberReader;
import withers.chip.Reading;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.ValueMaps;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.yaml.Choices;

/**
 * A row as the proposal would read it.
 *
 * @param cells what each field says, in the order of the proposal
 */
public record FirstRow(long line, List<Cell> cells) {

  /** Days that a spreadsheet holds as such. */
  private static final DatePattern ISO = DatePattern.of("yyyy-MM-dd");

  private static final ChipNumberReader NUMBERS = new ChipNumberReader(true);

  public FirstRow {
    cells = List.copyOf(cells);
  }

  /**
   * What a field says in the row.
   *
   * @param path as the profile writes it
   * @param text days as YYYY-MM-DD, words as ours; a person's details in full, or as their shape
   */
  public record Cell(String path, String text) {}

  /**
   * Reads a row.
   *
   * @param isOpen whether people's details are shown in full
   */
  public static FirstRow of(Row row, Header header, Proposal proposal, boolean isOpen) {
    List<Cell> cells = new ArrayList<>();
    proposal.key().headers().forEach(name -> cells.add(new Cell("key", text(row, header, name))));
    for (Proposal.Recognised field : proposal.fields()) {
      String text = text(row, header, field.header());
      if (!text.isEmpty()) {
        boolean masked = field.path().contains(".") && !isOpen;
        cells.add(new Cell(field.path(), masked ? shape(text) : read(field, text, proposal)));
      }
    }
    return new FirstRow(row.line(), cells);
  }

  private static String text(Row row, Header header, String name) {
    int place = header.place(name);
    return place < row.size()
        ? row.typed(place).day().map(LocalDate::toString).orElse(row.cell(place))
        : "";
  }

  private static String read(Proposal.Recognised field, String text, Proposal proposal) {
    return column(field)
        .flatMap(
            column ->
                switch (column.content()) {
                  case DAY ->
                      DatePattern.of(proposal.date().pattern())
                          .read(text)
                          .or(() -> ISO.read(text))
                          .map(LocalDate::toString)
                          .or(() -> Optional.of(text + " (no day)"));
                  case WORD -> word(column, text, proposal.values());
                  case NUMBER -> Optional.of(number(text));
                  case TEXT -> Optional.of(text);
                })
        .orElse(text);
  }

  private static String number(String text) {
    return NUMBERS.read(text) instanceof Reading.Accepted accepted
        ? accepted.number().toString()
        : text + " (no number as it stands)";
  }

  private static Optional<ColumnName> column(Proposal.Recognised field) {
    return Choices.names(ColumnName.class).contains(field.path())
        ? Optional.of(Choices.read(ColumnName.class, field.path()))
        : Optional.empty();
  }

  private static Optional<String> word(
      ColumnName column, String text, Map<ColumnName, Map<String, String>> values) {
    return new ValueMaps(values).ours(column, text);
  }

  /** Letters as x and digits as 0, so that a form can be recognised and a person can't. */
  static String shape(String text) {
    StringBuilder shape = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              if (Character.isDigit(c)) {
                shape.append('0');
              } else if (Character.isLetter(c)) {
                shape.append(Character.isUpperCase(c) ? 'X' : 'x');
              } else if (Character.getType(c) != Character.NON_SPACING_MARK) {
                shape.appendCodePoint(c);
              }
            });
    return shape.toString();
  }
}
