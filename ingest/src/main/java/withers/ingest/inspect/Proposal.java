package withers.ingest.inspect;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.ingest.profile.ColumnName;
import withers.source.SourceKind;

/**
 * What a file can be, with reasons, and what is left to the operator. It holds headers and words of
 * lists, never a cell about a person.
 *
 * @param file the file's name
 * @param rows how many rows were looked at
 * @param isWhole whether these were all
 * @param kind what kind of records it holds
 * @param layout the same in words
 * @param fields columns that were recognised, in the order of a profile
 * @param values the export's words for ours, for each column that holds words
 * @param passedOver headers of columns that were not recognised
 * @param questions everything that is not sure, and what only the operator knows
 */
public record Proposal(
    String file,
    int rows,
    boolean isWhole,
    SourceKind kind,
    String layout,
    Certainty kindCertainty,
    DatePattern date,
    Optional<ExportDate> exportDate,
    Key key,
    List<Recognised> fields,
    Map<ColumnName, Map<String, String>> values,
    List<String> passedOver,
    List<Question> questions) {

  public Proposal {
    fields = List.copyOf(fields);
    values = Map.copyOf(values);
    passedOver = List.copyOf(passedOver);
    questions = List.copyOf(questions);
  }

  /**
   * A column that was recognised.
   *
   * @param path as the profile writes it: {@code client.phones}
   * @param header of the column
   * @param reason in words
   */
  public record Recognised(String path, String header, Certainty certainty, String reason) {}

  /** How the file writes days. */
  public record DatePattern(String pattern, boolean isSure, String reason) {}

  /**
   * Where the date of the export is.
   *
   * @param column the header of a column that states it; empty when it is in the file's name
   * @param pattern of the date in the file's name; empty when a column states it
   */
  public record ExportDate(Optional<String> column, Optional<String> pattern, String reason) {}

  /**
   * What names a record.
   *
   * @param headers of its column, or of the columns that together name one
   */
  public record Key(List<String> headers, String reason) {
    public Key {
      headers = List.copyOf(headers);
    }
  }

  /** The column that was recognised as this. */
  public Optional<Recognised> field(String path) {
    return fields.stream().filter(field -> field.path().equals(path)).findFirst();
  }

  /** The questions about this: a path, or {@code kind}, {@code date}, {@code columns}. */
  public List<Question> questionsAbout(String about) {
    return questions.stream().filter(question -> question.about().equals(about)).toList();
  }
}
