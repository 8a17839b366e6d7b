package withers.kafka;

import java.io.File;
import java.util.Arrays;
import java.util.stream.Collectors;

/** The jars of the tests' class path, so that a broker comes from Maven and from nowhere else. */
public final class TestJars {

  private TestJars() {}

  /** All of them; classes under test stay out of it. */
  public static String all() {
    return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
        .filter(entry -> entry.endsWith(".jar"))
        .collect(Collectors.joining(File.pathSeparator));
  }
}
