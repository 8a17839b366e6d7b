package withers.ingest;

import java.nio.file.Path;
import java.util.Optional;
import withers.ingest.profile.SourceProfile;

/**
 * A file to be sorted.
 *
 * @param source whose it is, where that is known from elsewhere than its name
 */
public record Incoming(Path path, Optional<SourceProfile> source) {

  /** A file whose source is known by its name alone. */
  public static Incoming of(Path path) {
    return new Incoming(path, Optional.empty());
  }

  String name() {
    return path.getFileName().toString();
  }
}
