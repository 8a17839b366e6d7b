package withers.ingest.inspect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import withers.ingest.profile.ColumnName;

/** Finds what names a record: a column of numbers, or a recipe of several columns. */
record Keys(Table table, Board board, Search.Found found) {

  private static final List<ColumnName> RECIPE_PARTS =
      List.of(
          ColumnName.CHIP,
          ColumnName.FIRST,
          ColumnName.LAST,
          ColumnName.MOVED,
          ColumnName.MOVEMENT_TYPE,
          ColumnName.INTAKE,
          ColumnName.INTAKE_TYPE,
          ColumnName.SOLD,
          ColumnName.REPORTED,
          ColumnName.REPORT_TYPE,
          ColumnName.SUPPLIED);

  /** A key and what is to be asked about it. */
  record Choice(Proposal.Key key, Optional<Question> question) {}

  Choice choose() {
    return found.of(Field.key()).map(this::column).orElseGet(this::recipe);
  }

  private Choice column(Candidate candidate) {
    Column column = candidate.column();
    Proposal.Key key = new Proposal.Key(List.of(column.header()), uniqueness(List.of(column)));
    List<Candidate> rivals = rivals(candidate);
    if (rivals.isEmpty() && ContentScore.isUnique(column)) {
      return new Choice(key, Optional.empty());
    }
    List<String> choices = new ArrayList<>(List.of(ProposalMaker.quoted(column)));
    rivals.forEach(rival -> choices.add(ProposalMaker.quoted(rival.column())));
    return new Choice(
        key,
        Optional.of(
            new Question(
                "key",
                "Which column names a record and stays with it from export to export? "
                    + key.reason(),
                choices)));
  }

  /** Other columns that could be the key nearly as well, and are nothing else for sure. */
  private List<Candidate> rivals(Candidate chosen) {
    return board.candidates().stream()
        .filter(other -> other.field().use() == Use.KEY && !other.equals(chosen))
        .filter(other -> chosen.score() - other.score() < Caution.SURE_FIELD)
        .filter(other -> found.of(other.column()).map(c -> c.score() < 4).orElse(true))
        .toList();
  }

  private Choice recipe() {
    List<Column> parts = new ArrayList<>();
    for (ColumnName name : RECIPE_PARTS) {
      found.chosen().stream()
          .filter(candidate -> candidate.field().is(name))
          .map(Candidate::column)
          .filter(column -> parts.isEmpty() || repeats(parts) > 0)
          .findFirst()
          .ifPresent(parts::add);
    }
    List<String> headers = parts.stream().map(Column::header).toList();
    String reason = "no column of numbers names each row; " + uniqueness(parts);
    return new Choice(
        new Proposal.Key(headers, reason),
        Optional.of(
            new Question(
                "key",
                "May these columns together name a record? A row in which one of them changes counts as another record: "
                    + reason,
                List.of(String.join(" + ", headers)))));
  }

  private String uniqueness(List<Column> parts) {
    int repeats = repeats(parts);
    int rows = table.rows().size();
    return repeats == 0
        ? String.format(Locale.ROOT, "different in each of %,d rows", rows)
        : String.format(Locale.ROOT, "of %,d rows %,d have the key of another", rows, repeats);
  }

  private int repeats(List<Column> parts) {
    Map<List<String>, Integer> seen = new HashMap<>();
    int repeats = 0;
    for (int row = 0; row < table.rows().size(); row++) {
      int at = row;
      List<String> key = parts.stream().map(part -> part.cell(at)).toList();
      repeats += seen.merge(key, 1, Integer::sum) > 1 ? 1 : 0;
    }
    return repeats;
  }
}
