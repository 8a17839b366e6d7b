package withers.report.demo;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Where the project's folder is, as the launcher says.
 *
 * @param folder empty when nothing said so
 */
public record Home(Optional<Path> folder) {

  /** A system property: the folder that holds the launcher and {@code fixtures}. */
  public static final String PROPERTY = "withers.home";

  /** What this process was told. */
  public static Home ofThisProcess() {
    return new Home(Optional.ofNullable(System.getProperty(PROPERTY)).map(Path::of));
  }
}
