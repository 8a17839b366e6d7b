package withers.ingest.profile;

import java.nio.charset.Charset;
import java.util.Optional;
import withers.ingest.sniff.Delimiter;
import withers.ingest.sniff.Quoting;

/**
 * How a source writes text files; what is empty is found out from each file.
 *
 * @param charset for files that are not UTF-8
 */
public record TextFormat(
    Optional<Delimiter> delimiter, Optional<Quoting> quoting, Optional<Charset> charset) {

  /** Nothing is said. */
  public static final TextFormat FOUND_OUT =
      new TextFormat(Optional.empty(), Optional.empty(), Optional.empty());
}
