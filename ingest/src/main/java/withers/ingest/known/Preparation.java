package withers.ingest.known;

import java.io.IOException;
import java.time.LocalDate;
import withers.id.ImportId;

/**
 * An export that is about to be kept instead of the last one: all is written but the stamp that
 * makes it count.
 */
@FunctionalInterface
public interface Preparation {

  /**
   * Keeps it.
   *
   * @param parent the marker up to which the log tells what was prepared
   * @param date the export's date, the newest that the source has spoken of
   * @return whether it was kept: it is not when there is no use in it, and the next import reads
   *     all
   */
  boolean keep(ImportId parent, LocalDate date) throws IOException;
}
