package withers.ingest.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import withers.answers.SheetWords;
import withers.ingest.answers.AnswerSheet;
import withers.ingest.inbox.InboxFile;
import withers.ingest.receipt.Receipt;

/** Files that are lists' sheets that came back, among others. */
record AnswerFiles(Map<InboxFile, List<AnswerSheet>> sheets) {

  static final AnswerFiles NONE = new AnswerFiles(Map.of());

  AnswerFiles {
    sheets = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(sheets));
  }

  /**
   * Finds them.
   *
   * @param known the receipt of an export that need not be read again, and so is not opened
   */
  static AnswerFiles among(
      List<InboxFile> files, Function<InboxFile, Optional<Receipt>> known, List<SheetWords> words) {
    Map<InboxFile, List<AnswerSheet>> sheets = new LinkedHashMap<>();
    for (InboxFile file : files) {
      List<AnswerSheet> found =
          known.apply(file).isPresent() ? List.of() : AnswerSheet.in(file.path(), words);
      if (!found.isEmpty()) {
        sheets.put(file, found);
      }
    }
    return new AnswerFiles(sheets);
  }

  /** The files that are none. */
  List<InboxFile> without(List<InboxFile> files) {
    return files.stream().filter(file -> !sheets.containsKey(file)).toList();
  }

  List<AnswerSheet> all() {
    return sheets.values().stream().flatMap(List::stream).toList();
  }
}
