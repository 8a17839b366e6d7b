package withers.kafka.broker;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Starts programs of Kafka's, each in a JVM of its own, and keeps what they say.
 *
 * @param folder where what they say is kept
 * @param jars their class path
 */
record BrokerJava(Path folder, String jars) {

  /** A client compiler alone: a broker of minutes is up sooner with it. */
  private static final List<String> OPTIONS =
      List.of(
          "-Xmx512m",
          "-XX:TieredStopAtLevel=1",
          "-XX:+UseSerialGC",
          "-Dslf4j.provider=org.slf4j.simple.SimpleServiceProvider",
          "-Dorg.slf4j.simpleLogger.defaultLogLevel=warn");

  Process start(String name, List<String> arguments) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(OPTIONS);
    command.addAll(List.of("-cp", jars));
    command.addAll(arguments);
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.appendTo(output(name).toFile()))
        .start();
  }

  String said(String name) {
    try {
      return Files.readString(output(name));
    } catch (IOException e) {
      return e.toString();
    }
  }

  private Path output(String name) {
    return folder.resolve(name + ".txt");
  }
}
