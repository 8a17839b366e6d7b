package withers.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import withers.bench.BenchWorld.Month;

/**
 * Traces numbers as staff do, each in a process of its own: by the launcher that the system
 * property {@code bench.launcher} names, else by this class path with the launcher's options for
 * the JVM. The least counts.
 */
final class ColdTrace {

  private static final String LAUNCHER = "bench.launcher";
  private static final String REGISTER = "coast-register-";
  private static final int CHIP = 1;
  private static final int TRIES = 3;
  private static final int LOOK_EACH_MILLIS = 10;

  private ColdTrace() {}

  static Work.Done run(BenchWorld world, Stopwatch watch) throws Exception {
    Stopwatch least = new Stopwatch();
    long peak = 0;
    for (String chip : chips(world)) {
      Stopwatch one = new Stopwatch();
      List<String> command = command(world, chip);
      peak = Math.max(peak, one.timeChild(() -> trace(command)));
      least = least.seconds() == 0 || one.seconds() < least.seconds() ? one : least;
    }
    watch.add(least);
    return new Work.Done(1, Map.of("tries", (long) TRIES, Work.PEAK, peak));
  }

  /** Numbers of the first rows of a register. */
  private static List<String> chips(BenchWorld world) throws IOException {
    Path register =
        world.exports(Month.FIRST).stream()
            .filter(file -> file.getFileName().toString().startsWith(REGISTER))
            .findFirst()
            .orElseThrow();
    try (Stream<String> rows = Files.lines(register)) {
      return rows.skip(1).limit(TRIES).map(row -> row.split(",")[CHIP]).toList();
    }
  }

  private static List<String> command(BenchWorld world, String chip) {
    String launcher = System.getProperty(LAUNCHER, "");
    List<String> command = new ArrayList<>(launcher.isEmpty() ? java() : List.of(launcher));
    command.addAll(
        List.of("trace", "--workspace", world.folder().resolve("workspace").toString(), chip));
    return command;
  }

  private static List<String> java() {
    return List.of(
        StageProcess.JAVA,
        "-XX:TieredStopAtLevel=1",
        "-Dfile.encoding=UTF-8",
        "-Dslf4j.internal.verbosity=ERROR",
        "-cp",
        System.getProperty("java.class.path"),
        "withers.report.Main");
  }

  /** Bytes that were resident at most. */
  private static long trace(List<String> command) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(command)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    long peak = 0;
    while (!process.waitFor(LOOK_EACH_MILLIS, TimeUnit.MILLISECONDS)) {
      peak = Math.max(peak, Memory.peakOf(process).orElse(0));
    }
    if (process.exitValue() != 0) {
      throw new IllegalStateException(
          "Expected a known number, but trace ended with " + process.exitValue());
    }
    return peak;
  }
}
