package withers.ingest.inspect;

import java.util.List;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.FileFormat;
import withers.ingest.profile.TextFormat;

/**
 * How a file is written, as far as it was found out.
 *
 * @param format how it was read, whatever its days look like
 * @param isText false for workbooks, which have neither delimiter nor character set
 * @param header the names of its columns, each different; where the file has one twice, by their
 *     place among those of the name, as {@code Phone#2}; empty for workbooks
 * @param reasons why, in words
 * @param doubts what is not sure
 */
public record Writing(
    FileFormat format,
    boolean isText,
    List<String> header,
    List<String> reasons,
    List<Question> doubts) {

  public Writing {
    header = List.copyOf(header);
    reasons = List.copyOf(reasons);
    doubts = List.copyOf(doubts);
  }

  TextFormat text() {
    return format.text();
  }

  /** The format with the days of a proposal. */
  FileFormat with(DatePattern date) {
    return new FileFormat(format.text(), format.sheet(), format.totals(), date);
  }
}
