package withers.ingest.inspect;

import java.util.List;
import java.util.Optional;
import withers.ingest.profile.DatePattern;

/** Finds where the date of an export is. */
record ExportDateFinder(Table table, Search.Found found) {

  static final Question QUESTION =
      new Question(
          "export-date",
          "When did the source say this? Neither the file's name nor a column tells; the command line can.",
          List.of("command"));

  /** Forms of dates in names of files, in which no two read the same day. */
  private static final List<String> IN_NAMES =
      List.of("yyyy-MM-dd", "yyyyMMdd", "yyyy_MM_dd", "yyyy.MM.dd");

  Optional<Proposal.ExportDate> find() {
    return inName().or(this::inColumn);
  }

  private Optional<Proposal.ExportDate> inName() {
    return IN_NAMES.stream()
        .filter(pattern -> !DatePattern.of(pattern).findIn(table.file()).isEmpty())
        .findFirst()
        .map(
            pattern ->
                new Proposal.ExportDate(
                    Optional.empty(),
                    Optional.of(pattern),
                    "the file's name holds a date written as " + pattern));
  }

  private Optional<Proposal.ExportDate> inColumn() {
    return found
        .of(Field.exportDate())
        .map(
            candidate ->
                new Proposal.ExportDate(
                    Optional.of(candidate.column().header()),
                    Optional.empty(),
                    "every row has the same day, and no day is later"));
  }
}
