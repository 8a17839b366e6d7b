package withers.ingest.inspect;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Turns the best assignment of a table's columns into a proposal with its questions. */
final class ProposalMaker {

  private final Table table;
  private final DateOrder dates;
  private final Board board;
  private final Search search;
  private final Search.Found found;
  private final CellWords words;
  private final Caution caution;
  private final Reasons reasons;
  private final List<Question> questions = new ArrayList<>();

  ProposalMaker(
      Table table,
      DateOrder dates,
      Board board,
      Search search,
      Search.Found found,
      CellWords words,
      Caution caution) {
    this.table = table;
    this.dates = dates;
    this.board = board;
    this.search = search;
    this.found = found;
    this.words = words;
    this.caution = caution;
    this.reasons = new Reasons(words);
  }

  Proposal make(Certainty kind, List<Layout> rivals, Answers answers) {
    askAboutKind(rivals);
    askAboutDates();
    List<Proposal.Recognised> fields = fields();
    Keys.Choice key = new Keys(table, board, found).choose();
    key.question().ifPresent(questions::add);
    Optional<Proposal.ExportDate> exportDate = new ExportDateFinder(table, found).find();
    if (exportDate.isEmpty()) {
      questions.add(ExportDateFinder.QUESTION);
    }
    ValueProposals values = new ValueProposals(found, words);
    questions.addAll(values.questions());
    askAboutTheRest();
    askAboutMissing();
    questions.addAll(OperatorQuestions.of(answers));
    return new Proposal(
        table.file(),
        table.rows().size(),
        table.isWhole(),
        board.layout().kind(),
        board.layout().words(),
        kind,
        new Proposal.DatePattern(dates.pattern(), dates.isSure(), dates.reason()),
        exportDate,
        key.key(),
        fields,
        values.words(),
        passedOver(),
        questions);
  }

  private void askAboutKind(List<Layout> rivals) {
    if (!rivals.isEmpty()) {
      List<String> choices = new ArrayList<>(List.of(board.layout().words()));
      rivals.forEach(layout -> choices.add(layout.words()));
      questions.add(
          new Question("kind", "What kind of records are these? They fit more than one.", choices));
    }
  }

  private void askAboutDates() {
    boolean hasDays = board.columns().stream().anyMatch(Column::holdsDays);
    if (hasDays && !dates.isSure()) {
      questions.add(
          new Question(
              "date",
              "How are days written? " + dates.reason(),
              List.of(
                  dates.pattern(DayText.Order.DAY_FIRST),
                  dates.pattern(DayText.Order.MONTH_FIRST))));
    }
  }

  private List<Proposal.Recognised> fields() {
    List<Candidate> chosen = new ArrayList<>(found.chosen());
    chosen.removeIf(c -> c.field().use() == Use.EXPORT_DATE || c.field().use() == Use.KEY);
    chosen.sort(Comparator.comparingInt(Candidate::index));
    return chosen.stream().map(this::recognised).toList();
  }

  private Proposal.Recognised recognised(Candidate candidate) {
    Search.Found other = search.without(candidate, found);
    Certainty certainty = new Certainty(found.total() - other.total());
    if (certainty.bits() < caution.enough(candidate, other)) {
      ask(candidate, other);
    }
    return new Proposal.Recognised(
        candidate.field().path(), candidate.column().header(), certainty, reasons.of(candidate));
  }

  /** Shows what stands there now and what would stand there otherwise. */
  private void ask(Candidate candidate, Search.Found other) {
    String path = candidate.field().path();
    List<String> choices = new ArrayList<>(List.of(path + ": " + quoted(candidate.column())));
    other
        .of(candidate.field())
        .ifPresentOrElse(
            c -> choices.add(path + ": " + quoted(c.column())),
            () -> choices.add(path + ": no column"));
    other
        .of(candidate.column())
        .ifPresentOrElse(
            c -> choices.add(c.field().path() + ": " + quoted(candidate.column())),
            () -> choices.add(quoted(candidate.column()) + " is passed over"));
    questions.add(
        new Question(
            path,
            "What is the column %s? It was taken for %s, and could be something else."
                .formatted(quoted(candidate.column()), path),
            choices));
  }

  static String quoted(Column column) {
    return '"' + column.header() + '"';
  }

  private List<Column> left() {
    return board.columns().stream().filter(column -> found.of(column).isEmpty()).toList();
  }

  private List<String> passedOver() {
    return left().stream().map(Column::header).toList();
  }

  private void askAboutTheRest() {
    List<String> choices = new ArrayList<>();
    for (Column column : left()) {
      choices.add(quoted(column) + possible(column));
    }
    if (!choices.isEmpty()) {
      questions.add(
          new Question(
              "columns",
              "Are these columns to be passed over? They fit nothing that is read, or something that has a better column.",
              choices));
    }
  }

  private String possible(Column column) {
    List<String> paths =
        board.candidates().stream()
            .filter(candidate -> candidate.column() == column && candidate.content() > -3)
            .sorted(Comparator.comparingDouble((Candidate candidate) -> -candidate.score()))
            .map(candidate -> candidate.field().path())
            .distinct()
            .limit(3)
            .toList();
    return paths.isEmpty() ? "" : " (perhaps " + String.join(", ", paths) + ")";
  }

  private void askAboutMissing() {
    board.layout().needed().stream()
        .filter(name -> found.chosen().stream().noneMatch(c -> c.field().is(name)))
        .sorted()
        .forEach(
            name ->
                questions.add(
                    new Question(
                        name.word(),
                        "Which column is %s? The kind needs one, and none fits."
                            .formatted(name.word()),
                        List.of())));
    board.layout().neededParties().stream()
        .filter(party -> found.chosen().stream().noneMatch(c -> c.field().isOf(party)))
        .forEach(
            party ->
                questions.add(
                    new Question(
                        party.word(),
                        "Which columns are about %s? The kind needs some, and none fits."
                            .formatted(party.word()),
                        List.of())));
  }
}
