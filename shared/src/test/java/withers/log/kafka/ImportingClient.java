package withers.log.kafka;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import withers.kafka.ThreeBrokers;
import withers.log.EventLog;
import withers.log.LogUnavailableException;

/**
 * Another process that makes the imports of a load, one after another, and says what it is about to
 * do and has done. When the log can't be used it says so and begins anew: it sweeps, reads what is
 * there, and goes on with what is missing, as a person does who repeats a command.
 */
final class ImportingClient implements AutoCloseable {
  static final String DONE = "done";
  static final String COMMITTED = "committed ";
  static final String UNAVAILABLE = "unavailable ";

  /** Shorter than a user's, so that tests need not wait so long. */
  static final Duration PATIENCE = Duration.ofSeconds(8);

  private final Process process;
  private final BufferedReader said;

  private ImportingClient(Process process) {
    this.process = process;
    this.said =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  static ImportingClient start(String addresses, String prefix, long seed) throws IOException {
    List<String> command =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-Xmx256m",
            "-Dslf4j.internal.verbosity=ERROR",
            "-Dorg.slf4j.simpleLogger.defaultLogLevel=off",
            "-cp",
            System.getProperty("java.class.path"),
            ImportingClient.class.getName(),
            addresses,
            prefix,
            String.valueOf(seed));
    return new ImportingClient(
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start());
  }

  /** Its next line; fails when it ended without being done. */
  String says() throws IOException {
    String line = said.readLine();
    if (line == null) {
      throw new IllegalStateException(
          "The importing client ended in the midst, with exit code "
              + process.onExit().join().exitValue());
    }
    return line;
  }

  /** Ends it as a power cut does. */
  @Override
  public void close() {
    process.destroyForcibly().onExit().join();
  }

  public static void main(String... args) {
    Load load = new Load(Long.parseLong(args[2]));
    while (true) {
      try (EventLog log = ThreeBrokers.log(args[0], args[1], PATIENCE)) {
        importAll(log, load);
        System.out.println(DONE);
        return;
      } catch (LogUnavailableException e) {
        System.out.println(UNAVAILABLE + e.getMessage());
      }
    }
  }

  private static void importAll(EventLog log, Load load) {
    System.out.println("opened");
    log.sweep();
    System.out.println("swept");
    Set<Integer> committed = Set.copyOf(load.check(log.snapshot()));
    System.out.println("read");
    Load.all().filter(number -> !committed.contains(number)).forEach(n -> importOne(log, load, n));
  }

  private static void importOne(EventLog log, Load load, int number) {
    System.out.println("appending " + number);
    if (number % 3 == 0) {
      load.appendInVain(log, number);
    }
    load.append(log, number);
    System.out.println("committing " + number);
    load.commit(log, number);
    System.out.println(COMMITTED + number);
  }
}
