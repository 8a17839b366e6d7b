package withers.ingest.inspect;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import withers.source.SourceKind;

/** Looks at tables and proposes what they are. Can be used again; not safe for several threads. */
public final class Examiner {

  private final HeaderWords headerWords = HeaderWords.load();
  private final CellWords cellWords = CellWords.load();
  private final HeaderScore headers = new HeaderScore(headerWords);

  private record Attempt(Board board, Search search, Search.Found found) {}

  /**
   * Proposes what a table is.
   *
   * @param answers what the operator has told already
   * @throws IllegalArgumentException when it has no columns
   */
  public Proposal examine(Table table, Answers answers) {
    if (table.header().isEmpty()) {
      throw new IllegalArgumentException("Expected a table with columns, but found none");
    }
    List<Column> columns = Column.of(table, headerWords);
    Caution caution = Caution.of(columns);
    DateOrder dates = DateOrder.of(columns);
    List<Attempt> attempts = attempts(columns, dates);
    Attempt best = attempts.get(0);
    Optional<Attempt> other = attempts.stream().filter(a -> kind(a) != kind(best)).findFirst();
    double lead = best.found().total() - other.map(a -> a.found().total()).orElse(0.0);
    return new ProposalMaker(
            table, dates, best.board(), best.search(), best.found(), cellWords, caution)
        .make(new Certainty(lead), rivals(attempts, best, caution), answers);
  }

  /** How many of these headers have a word that is known: another character set, other words. */
  public long known(List<String> header) {
    return header.stream().filter(one -> !headerWords.read(one).concepts().isEmpty()).count();
  }

  private static SourceKind kind(Attempt attempt) {
    return attempt.board().layout().kind();
  }

  private List<Attempt> attempts(List<Column> columns, DateOrder dates) {
    DayScore days = new DayScore(columns, dates.order());
    ContentScore contents = new ContentScore(cellWords, days);
    PairScore pairs = new PairScore(new Relations(days));
    List<Attempt> attempts = new ArrayList<>();
    for (Layout layout : Layout.values()) {
      Board board = new Board(layout, columns, headers, contents, pairs);
      Search search = new Search(board);
      attempts.add(new Attempt(board, search, search.best()));
    }
    attempts.sort(Comparator.comparingDouble((Attempt attempt) -> -attempt.found().total()));
    return attempts;
  }

  /** Other layouts that are nearly as good. */
  private static List<Layout> rivals(List<Attempt> attempts, Attempt best, Caution caution) {
    return attempts.stream()
        .skip(1)
        .filter(attempt -> best.found().total() - attempt.found().total() < caution.sureKind())
        .map(attempt -> attempt.board().layout())
        .toList();
  }
}
