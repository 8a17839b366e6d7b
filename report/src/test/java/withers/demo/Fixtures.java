package withers.demo;

import java.nio.file.Files;
import java.nio.file.Path;

/** Finds the repository's fixtures from wherever the tests run. */
public final class Fixtures {

  private Fixtures() {}

  /** The folder {@code fixtures}. */
  public static Path folder() {
    return root().resolve("fixtures");
  }

  /** The project's folder. */
  static Path root() {
    Path here = Path.of("").toAbsolutePath();
    for (Path at = here; at != null; at = at.getParent()) {
      if (Files.isDirectory(at.resolve("fixtures/stories"))) {
        return at;
      }
    }
    throw new IllegalStateException("Expected the repository's fixtures above " + here);
  }
}
