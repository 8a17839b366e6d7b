package withers.report.demo;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import withers.source.InputRefusedException;

/** The jars of a broker: not ours to carry along, but where Maven keeps them on this machine. */
public final class BrokerJars {

  /** Where the launcher's build writes down which they are (decision 43). */
  private static final Path LIST = Path.of("shared", "broker", "target", "launcher", "jars");

  private BrokerJars() {}

  /**
   * Their class path.
   *
   * @throws InputRefusedException when this copy of the project has none, or one of them is gone
   */
  public static String of(Home home) {
    String jars =
        home.folder()
            .map(folder -> folder.resolve(LIST))
            .flatMap(BrokerJars::read)
            .orElseThrow(
                () ->
                    new InputRefusedException(
                        "Expected the jars of a Kafka broker, but this Withers has none: start the demo with the launcher of a whole copy of the project, or name a broker with --bootstrap HOST:PORT (docs/kafka.md)"));
    Optional<String> gone =
        Arrays.stream(jars.split(File.pathSeparator))
            .filter(jar -> !Files.isReadable(Path.of(jar)))
            .findFirst();
    if (gone.isPresent()) {
      throw new InputRefusedException(
          "Expected the broker's jar %s, but it is missing: fetch it anew with \"mvn -pl shared/broker -Dbuild.folder=target/launcher package\""
              .formatted(gone.get()));
    }
    return jars;
  }

  private static Optional<String> read(Path list) {
    try {
      return Files.exists(list) ? Optional.of(Files.readString(list).strip()) : Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
