package withers.ingest;

import java.util.List;
import withers.ingest.inspect.Draft;
import withers.ingest.inspect.FirstRow;
import withers.ingest.inspect.Question;
import withers.ingest.inspect.Trial;

/**
 * What was found out about a file.
 *
 * @param draft the profile that is proposed for it
 * @param isTried whether its rows could be tried; not when a column is missing or there twice
 * @param first the first rows as they would be read
 * @param unread every row that could not be read
 * @param rows how many rows the file has
 */
public record Inspected(
    Draft draft, boolean isTried, List<FirstRow> first, List<Trial.Unread> unread, long rows) {

  public Inspected {
    first = List.copyOf(first);
    unread = List.copyOf(unread);
  }

  public List<Question> questions() {
    return draft.questions();
  }

  /** Whether nothing needs a person. */
  public boolean isComplete() {
    return questions().isEmpty() && isTried && unread.isEmpty();
  }
}
