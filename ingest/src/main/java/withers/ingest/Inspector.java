package withers.ingest;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import withers.ingest.file.ExportFile;
import withers.ingest.inspect.Answers;
import withers.ingest.inspect.Draft;
import withers.ingest.inspect.Examiner;
import withers.ingest.inspect.FirstRow;
import withers.ingest.inspect.Proposal;
import withers.ingest.inspect.Table;
import withers.ingest.inspect.Trial;
import withers.ingest.inspect.Writing;
import withers.ingest.pack.PackedFile;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;
import withers.ingest.rows.Typed;

/** Looks at files that no profile describes. Not safe for several threads. */
public final class Inspector {

  /**
   * How to look.
   *
   * @param sheet which sheet of a workbook; empty for the only one
   * @param answers what the operator has told already
   * @param firstRows how many rows are shown
   * @param isOpen whether people's details are shown in full
   */
  public record Options(Optional<String> sheet, Answers answers, int firstRows, boolean isOpen) {}

  /** A proposal rests on so many rows at most; all are tried. */
  private static final int MOST_EXAMINED = 50_000;

  private final Examiner examiner = new Examiner();

  /**
   * Looks at a file.
   *
   * @throws withers.source.InputRefusedException when it is broken, or nothing that can be read
   */
  public Inspected inspect(PackedFile file, Options options) {
    Writing writing = WritingFinder.find(file, options.sheet(), examiner::known);
    ExportFile export = ExportFile.inspect(file, writing.format());
    Proposal proposal = examiner.examine(table(file, export, writing), options.answers());
    Draft draft = new Draft(proposal, writing, options.answers());
    return tried(export, draft, options);
  }

  private static Table table(PackedFile file, ExportFile export, Writing writing) {
    try (Rows rows = open(export, writing)) {
      List<List<String>> cells = new ArrayList<>();
      int width = rows.header().size();
      Optional<Row> row = rows.next();
      while (row.isPresent() && cells.size() < MOST_EXAMINED) {
        row.filter(one -> one.size() == width).map(Inspector::cells).ifPresent(cells::add);
        row = rows.next();
      }
      return new Table(
          file.baseName(), ColumnNames.of(rows.header().names()), cells, row.isEmpty());
    }
  }

  private static Rows open(ExportFile export, Writing writing) {
    List<String> named = writing.header().stream().filter(name -> !name.isBlank()).toList();
    return OpenExport.rows(export, writing.format(), named, bytes -> {});
  }

  private static List<String> cells(Row row) {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < row.size(); i++) {
      Typed typed = row.typed(i);
      cells.add(typed.day().map(Object::toString).orElse(row.cell(i)));
    }
    return cells;
  }

  private static Inspected tried(ExportFile export, Draft draft, Options options) {
    Proposal proposal = draft.proposal();
    try (Rows rows = open(export, draft.writing())) {
      Header header = rows.header();
      Optional<Trial> trial = Trial.of(draft, header);
      List<FirstRow> first = new ArrayList<>();
      List<Trial.Unread> unread = new ArrayList<>();
      long count = 0;
      for (Optional<Row> row = rows.next(); row.isPresent(); row = rows.next()) {
        Row one = row.get();
        count++;
        if (first.size() < options.firstRows() && one.size() == header.size()) {
          first.add(FirstRow.of(one, header, proposal, options.isOpen()));
        }
        trial.flatMap(t -> t.read(one)).ifPresent(unread::add);
      }
      return new Inspected(draft, trial.isPresent(), first, unread, count);
    }
  }
}
