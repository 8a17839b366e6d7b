package withers.ingest.rows;

import java.util.List;
import java.util.Optional;
import withers.source.InputRefusedException;

/** The rows of an open file, under their header. Close it when done; not safe for threads. */
public interface Rows extends AutoCloseable {

  Header header();

  /**
   * The next row; what holds no record, such as a blank line, is passed over. Empty at the end,
   * when the file is known to be whole.
   *
   * @throws InputRefusedException when the file is broken here, or cut off
   */
  Optional<Row> next();

  /** What a person should know about how it was read so far, a sentence each. */
  default List<String> remarks() {
    return List.of();
  }

  @Override
  void close();
}
