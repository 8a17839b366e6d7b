package withers.ingest;

import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.Limits;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.translate.Reject;
import withers.ingest.translate.Translation;
import withers.source.InputRefusedException;

/** Reads an export through before anything is written, and decides whether it can be taken. */
final class Check {

  private record Reason(Reject.Code code, String column) {}

  private record Example(String file, long line, Reject reject) {}

  private final ExportSet set;
  private final Map<String, Long> rows = new HashMap<>();
  private final Map<Reason, Long> rejects = new LinkedHashMap<>();
  private final Map<Reason, Example> examples = new HashMap<>();

  private Check(ExportSet set) {
    this.set = set;
  }

  /**
   * Reads the export.
   *
   * @return how many rows each file has, by the file's digest
   * @throws InputRefusedException when it can't be taken
   */
  static Map<String, Long> rows(ExportSet set, RowSource reader) {
    Check check = new Check(set);
    set.files().forEach(file -> check.rows.put(file.sha256(), reader.recognised(file)));
    reader.read(check::count);
    if (!set.isCorrections()) {
      check.requireEnough();
      check.requireFewRejects();
    }
    return Map.copyOf(check.rows);
  }

  private void count(ExportFile file, Header header, Row row, Translation translation) {
    rows.merge(file.sha256(), 1L, Long::sum);
    if (translation instanceof Translation.Rejected rejected) {
      Reason reason = new Reason(rejected.reject().code(), rejected.reject().column());
      rejects.merge(reason, 1L, Long::sum);
      examples.computeIfAbsent(
          reason, r -> new Example(file.name(), row.line(), rejected.reject()));
    }
  }

  private long read() {
    return rows.values().stream().mapToLong(count -> count).sum();
  }

  private void requireEnough() {
    int floor = set.profile().limits().floor();
    if (read() < floor) {
      throw new InputRefusedException(
          "Expected at least %,d %s, but found %,d (%s): ask for the whole export, or lower limits: floor in the profile. Nothing was changed."
              .formatted(floor, floor == 1 ? "row" : "rows", read(), set.names()));
    }
  }

  private void requireFewRejects() {
    Limits limits = set.profile().limits();
    long rejected = rejects.values().stream().mapToLong(count -> count).sum();
    if (limits.areTooMany(rejected, read())) {
      throw new InputRefusedException(
          "Expected at most %d %% of the rows to be rejected, but found %,d of %,d (%s). %s. Nothing was changed."
              .formatted(limits.rejectsPercent(), rejected, read(), set.names(), commonest()));
    }
  }

  private String commonest() {
    Reason reason =
        rejects.entrySet().stream()
            .max(Comparator.comparingLong(Map.Entry::getValue))
            .map(Map.Entry::getKey)
            .orElseThrow();
    Example example = examples.getOrDefault(reason, new Example("", 0, noReject()));
    String column = reason.column().isEmpty() ? "" : ", column \"" + reason.column() + "\"";
    return "Most often (%,d times): %s (first in %s, line %d%s)"
        .formatted(
            rejects.getOrDefault(reason, 0L),
            example.reject.message(),
            example.file,
            example.line,
            column);
  }

  private static Reject noReject() {
    return new Reject(Reject.Code.NO_KEY, "", "");
  }
}
