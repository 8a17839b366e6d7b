package withers.ingest.inspect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import withers.ingest.profile.ColumnName;
import withers.yaml.Choices;

/** Our own list of what words in cells mean. */
final class CellWords {

  /** The lists: several columns can share one. */
  enum Topic {
    SPECIES,
    SEX,
    YES_NO,
    SCAN_RESULT,
    MOVEMENT,
    STATUS,
    REPORT,
    ORGANISATION
  }

  /**
   * What a word means.
   *
   * @param ours our word
   * @param isSure false when it could mean something else, so that the operator is asked
   */
  record Meaning(String ours, boolean isSure) {}

  private record Line(Pattern pattern, Meaning meaning) {}

  private final Map<String, List<Line>> lines = new HashMap<>();

  private CellWords() {
    for (List<String> row : Lists.rows("cell-words.tsv")) {
      Meaning meaning = new Meaning(row.get(1), row.get(2).equals("sure"));
      lines
          .computeIfAbsent(row.get(0), topic -> new ArrayList<>())
          .add(new Line(Pattern.compile(row.get(3)), meaning));
    }
  }

  /** Reads the list. */
  static CellWords load() {
    return new CellWords();
  }

  /** What a cell means under this topic; empty when the list does not tell. */
  Optional<Meaning> read(Topic topic, String cell) {
    String folded = Folding.words(cell);
    return lines.getOrDefault(Choices.name(topic), List.of()).stream()
        .filter(line -> line.pattern().matcher(folded).matches())
        .map(Line::meaning)
        .findFirst();
  }

  /** The list in which a column's words are looked up; empty for columns that hold no words. */
  static Optional<Topic> topic(ColumnName column) {
    return switch (column) {
      case SPECIES -> Optional.of(Topic.SPECIES);
      case SEX -> Optional.of(Topic.SEX);
      case DECEASED, PREPAID -> Optional.of(Topic.YES_NO);
      case SCAN_RESULT -> Optional.of(Topic.SCAN_RESULT);
      case INTAKE_TYPE, OUTCOME_TYPE, MOVEMENT_TYPE -> Optional.of(Topic.MOVEMENT);
      case STATUS, END_REASON -> Optional.of(Topic.STATUS);
      case REPORT_TYPE -> Optional.of(Topic.REPORT);
      default -> Optional.empty();
    };
  }
}
