package withers.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * Runs stages, each in a JVM of its own: cold, as a user's command is, and with a peak of memory
 * that is its own.
 *
 * @param options of those JVMs
 */
record StageProcess(List<String> options) implements StageRunner {

  static final String JAVA = Path.of(System.getProperty("java.home"), "bin", "java").toString();

  /** As the launcher starts the commands that take long, unless it is told another. */
  private static final List<String> COLLECTOR = List.of("-XX:+UseParallelGC", "-XX:NewRatio=4");

  private static final List<String> SECOND_COMPILER_LATE =
      List.of(
          "-XX:Tier4InvocationThreshold=50000",
          "-XX:Tier4MinInvocationThreshold=6000",
          "-XX:Tier4CompileThreshold=150000",
          "-XX:Tier4BackEdgeThreshold=400000");

  private static final Set<Stage> LISTS = EnumSet.of(Stage.LISTS, Stage.NEXT_LISTS);

  StageProcess {
    options = List.copyOf(options);
  }

  /**
   * Runs a stage on the files of a folder.
   *
   * @throws IllegalStateException when the stage failed; what it said went to standard error
   */
  @Override
  public Measured run(Stage stage, Path folder) throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(command(stage, folder));
    builder.redirectError(ProcessBuilder.Redirect.INHERIT);
    Process process = builder.start();
    process.getOutputStream().close();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    int exit = process.waitFor();
    if (exit != 0) {
      throw new IllegalStateException(
          "Expected %s to succeed, but its JVM ended with %d".formatted(stage.word(), exit));
    }
    List<String> lines = out.lines().toList();
    return BenchJson.readStage(lines.get(lines.size() - 1));
  }

  /** The launcher has lists made without the second compiler, and other things with it late. */
  private static List<String> asLaunched(Stage stage) {
    return LISTS.contains(stage) ? List.of("-XX:TieredStopAtLevel=1") : SECOND_COMPILER_LATE;
  }

  private List<String> command(Stage stage, Path folder) {
    List<String> command = new ArrayList<>(List.of(JAVA));
    if (options.stream().noneMatch(option -> option.matches("-XX:\\+Use.*GC"))) {
      command.addAll(COLLECTOR);
    }
    command.addAll(asLaunched(stage));
    command.addAll(options);
    command.addAll(
        List.of(
            "-Dfile.encoding=UTF-8",
            "-Duser.timezone=UTC",
            "-Dslf4j.internal.verbosity=ERROR",
            "--enable-native-access=ALL-UNNAMED",
            "-XX:+IgnoreUnrecognizedVMOptions",
            "--sun-misc-unsafe-memory-access=allow",
            "-cp",
            System.getProperty("java.class.path"),
            StageMain.class.getName(),
            stage.word(),
            folder.toString()));
    return command;
  }
}
