package withers.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import withers.cli.Console;

/** The program: generates the files, runs every stage, prints a table and a line of JSON. */
@Command(
    name = "bench",
    mixinStandardHelpOptions = true,
    description =
        "Imports and replays generated exports, stage by stage, and prints what each took.")
final class Bench implements Callable<Integer> {

  private static final double MILLION = 1e6;

  private final Console console;
  private final Clock clock;

  @Option(
      names = "--rows",
      defaultValue = "1000000",
      description = "About how many rows the first month's exports have (${DEFAULT-VALUE}).")
  private long rows;

  @Option(
      names = "--sizes",
      split = ",",
      description = "Millions of rows, such as 5,10,20: one after the other, and how time grows.")
  private List<Double> sizes = new ArrayList<>();

  @Option(
      names = "--heaps",
      split = ",",
      description = "Heaps for the stages' JVMs, such as 512m,1g: each size with each of them.")
  private List<String> heaps = new ArrayList<>();

  @Option(
      names = "--heap",
      defaultValue = "1g",
      description = "The most that each stage's Java heap may take (${DEFAULT-VALUE}).")
  private String heap;

  @Mixin private MixOptions mix;
  @Mixin private StageOptions stages;

  @Option(
      names = "--folder",
      description =
          "A new or empty folder for the files, which stays. Without it they go to a temporary"
              + " folder, which does not.")
  private Optional<Path> folder;

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
    System.exit(commandLine(Console.ofThisProcess(), Clock.systemUTC()).execute(arguments));
  }

  static CommandLine commandLine(Console console, Clock clock) {
    return new CommandLine(new Bench(console, clock))
        .setCaseInsensitiveEnumValuesAllowed(true)
        .registerConverter(Stage.class, Stage::of);
  }

  @Override
  public Integer call() throws Exception {
    List<BenchRun> runs = new ArrayList<>();
    for (long size : sizes()) {
      for (String most : heaps.isEmpty() ? List.of(heap) : heaps) {
        BenchRun run = run(size, most);
        new BenchTable(run).lines().forEach(console::print);
        console.print(BenchJson.write(run));
        runs.add(run);
      }
    }
    new Growth(runs).lines().forEach(console::print);
    new Heaps(runs).lines().forEach(console::print);
    return 0;
  }

  private List<Long> sizes() {
    return sizes.isEmpty()
        ? List.of(rows)
        : sizes.stream().map(millions -> Math.round(millions * MILLION)).toList();
  }

  private BenchRun run(long size, String most) throws Exception {
    Path files = folder(size, most);
    try {
      console.say("Generating about %,d rows in %s".formatted(size, files));
      BenchWorld world = BenchWorld.generate(files, stages.seed(), size, mix);
      return new Rounds(stages, world, size, mix.text(), most, console, clock).run();
    } finally {
      if (folder.isEmpty()) {
        Folders.remove(files);
      }
    }
  }

  private Path folder(long size, String most) throws IOException {
    return folder.isPresent()
        ? Files.createDirectories(folder.get().resolve(size + "-" + most))
        : Files.createTempDirectory("withers-bench");
  }
}
