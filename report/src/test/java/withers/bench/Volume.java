package withers.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import withers.cli.Console;
import withers.report.mail.smtp.FaultyServer;

/**
 * The program: from exports to mails that a server on this machine took over, for many recipients
 * or many follow-ups, each command in a JVM of its own with a heap that does not grow with them.
 */
@Command(
    name = "volume",
    mixinStandardHelpOptions = true,
    description = "Makes and sends lists of any length to any number of recipients.")
final class Volume implements Callable<Integer> {
  private static final double MEBI = 1 << 20;
  private static final long LOOK_EACH_MILLIS = 100;
  private static final double NANOS = 1e9;

  private final Console console;

  @Option(names = "--recipients", defaultValue = "20", description = "Clinics (${DEFAULT-VALUE}).")
  private int recipients;

  @Option(
      names = "--each",
      defaultValue = "100",
      description = "Follow-ups of each (${DEFAULT-VALUE}).")
  private int each;

  @Option(names = "--heap", defaultValue = "512m", description = "Heap (${DEFAULT-VALUE}).")
  private String heap = "";

  @Option(names = "--folder", description = "Where to work. Default: a new folder, removed.")
  private Path folder = Path.of("");

  Volume(Console console) {
    this.console = console;
  }

  /**
   * Runs and ends the JVM with its exit code.
   *
   * @param arguments options; {@code --help} tells them
   */
  public static void main(String... arguments) {
    System.exit(new CommandLine(new Volume(Console.ofThisProcess())).execute(arguments));
  }

  @Override
  public Integer call() throws IOException, InterruptedException {
    Machine machine = Machine.here();
    console.print(
        "%,d recipients with %,d each, heap %s; %d processors, load %.1f before; Java %s"
            .formatted(
                recipients,
                each,
                heap,
                machine.processors(),
                machine.loadAverage(),
                machine.java()));
    boolean isOurs = folder.toString().isEmpty();
    Path place = isOurs ? Files.createTempDirectory("withers-volume") : folder;
    try (FaultyServer server = FaultyServer.forgetful()) {
      new Crowd(recipients, each).write(place, server.port());
      run(place, "ingest");
      run(place, "reconcile", "--as-of", Crowd.AS_OF.toString());
      run(place, "report");
      run(place, "report", "--send", "--yes");
      console.print(
          "taken over: %,d mails; lists %.1f MiB, mails %.1f MiB"
              .formatted(
                  server.taken().size(),
                  size(place.resolve("lists")) / MEBI,
                  size(place.resolve("outbox")) / MEBI));
      return server.taken().size() == recipients ? 0 : 1;
    } finally {
      if (isOurs) {
        remove(place);
      }
    }
  }

  private void run(Path place, String command, String... more)
      throws IOException, InterruptedException {
    long before = System.nanoTime();
    Process process =
        new ProcessBuilder(java(place, command, more))
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    long peak = 0;
    while (!process.waitFor(LOOK_EACH_MILLIS, TimeUnit.MILLISECONDS)) {
      peak = Math.max(peak, resident(process).orElse(0));
    }
    console.print(
        String.format(
            Locale.ROOT,
            "%-20s %8.1f s  %6.0f MiB resident at most",
            String.join(" ", Stream.concat(Stream.of(command), Stream.of(more)).toList()),
            (System.nanoTime() - before) / NANOS,
            peak / MEBI));
    if (process.exitValue() != 0) {
      throw new IllegalStateException(
          "Expected %s to succeed, but it ended with %d".formatted(command, process.exitValue()));
    }
  }

  private static OptionalLong resident(Process process) {
    try {
      return Memory.peak(Files.readAllLines(Path.of("/proc", process.pid() + "", "status")));
    } catch (IOException ended) {
      return OptionalLong.empty();
    }
  }

  private List<String> java(Path place, String command, String... more) {
    List<String> java =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx" + heap,
                "-Dfile.encoding=UTF-8",
                "-Dslf4j.internal.verbosity=ERROR",
                "-XX:+IgnoreUnrecognizedVMOptions",
                "--enable-native-access=ALL-UNNAMED",
                "--sun-misc-unsafe-memory-access=allow",
                "-cp",
                System.getProperty("java.class.path"),
                "withers.report.Main",
                command,
                "--workspace",
                place.toString()));
    java.addAll(List.of(more));
    return java;
  }

  private static long size(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).mapToLong(file -> file.toFile().length()).sum();
    }
  }

  private static void remove(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      files.sorted(java.util.Comparator.reverseOrder()).forEach(Volume::delete);
    }
  }

  private static void delete(Path file) {
    try {
      Files.delete(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
