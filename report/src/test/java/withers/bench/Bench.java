package withers.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import withers.cli.Console;
import withers.demo.DemoWorld;

/** The program: generates the files, runs every stage, prints a table and a line of JSON. */
@Command(
    name = "bench",
    mixinStandardHelpOptions = true,
    description =
        "Imports and replays generated exports, stage by stage, and prints what each took.")
final class Bench implements Callable<Integer> {

  private final Console console;
  private final Clock clock;

  @Option(
      names = "--rows",
      defaultValue = "1000000",
      description = "About how many rows the first month's exports have (${DEFAULT-VALUE}).")
  private long rows;

  @Mixin private MixOptions mix;

  @Option(names = "--seed", description = "Another seed gives other files.")
  private long seed = DemoWorld.SEED;

  @Option(
      names = "--heap",
      defaultValue = "1g",
      description = "The most that each stage's Java heap may take (${DEFAULT-VALUE}).")
  private String heap;

  @Option(names = "--label", description = "Goes into the JSON, a commit for example.")
  private String label = "";

  @Option(
      names = "--folder",
      description =
          "A new or empty folder for the files, which stays. Without it they go to a temporary"
              + " folder, which does not.")
  private Optional<Path> folder;

  @Option(
      names = "--jvm",
      description =
          "An option for the JVM of each stage, {stage} standing for its name; repeatable.")
  private List<String> jvm = new ArrayList<>();

  Bench(Console console, Clock clock) {
    this.console = console;
    this.clock = clock;
  }

  /**
   * Runs the benchmark and ends the JVM with its exit code.
   *
   * @param arguments options; {@code --help} tells them
   */
  public static void main(String... arguments) {
    System.exit(
        new CommandLine(new Bench(Console.ofThisProcess(), Clock.systemUTC()))
            .setCaseInsensitiveEnumValuesAllowed(true)
            .execute(arguments));
  }

  @Override
  public Integer call() throws Exception {
    Path files = folder.isPresent() ? Files.createDirectories(folder.get()) : temporary();
    try {
      print(run(files));
      return 0;
    } finally {
      if (folder.isEmpty()) {
        delete(files);
      }
    }
  }

  private BenchRun run(Path files) throws IOException, InterruptedException {
    Instant start = clock.instant();
    Machine machine = Machine.here();
    List<Measured> stages = new ArrayList<>();
    console.say("Generating about %,d rows in %s".formatted(rows, files));
    BenchWorld.generate(files, seed, rows, mix);
    for (Stage stage : Stage.values()) {
      console.say("Running: " + stage.title());
      stages.add(process(stage).run(stage, files));
    }
    BenchRun run = new BenchRun(start, label, rows, seed, mix.text(), heap, machine, stages);
    new Sums(run).require();
    return run;
  }

  private StageProcess process(Stage stage) {
    List<String> options = new ArrayList<>(List.of("-Xmx" + heap));
    jvm.forEach(option -> options.add(option.replace("{stage}", stage.word())));
    return new StageProcess(options);
  }

  private void print(BenchRun run) {
    new BenchTable(run).lines().forEach(console::print);
    console.print(BenchJson.write(run));
  }

  private static Path temporary() throws IOException {
    return Files.createTempDirectory("withers-bench");
  }

  private static void delete(Path files) throws IOException {
    try (Stream<Path> all = Files.walk(files)) {
      for (Path file : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
