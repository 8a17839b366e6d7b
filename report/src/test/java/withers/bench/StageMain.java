package withers.bench;

import java.nio.file.Path;
import java.util.OptionalLong;

/** Runs one stage in the JVM that was started for it. */
final class StageMain {

  private StageMain() {}

  /**
   * Writes one line of JSON to standard output.
   *
   * @param arguments the stage's word, and the folder of the generated files
   */
  public static void main(String... arguments) throws Exception {
    System.out.println(BenchJson.write(run(Stage.of(arguments[0]), Path.of(arguments[1]))));
  }

  /** Runs it in this JVM. */
  static Measured run(Stage stage, Path folder) throws Exception {
    Stopwatch watch = new Stopwatch();
    Work.Done done = stage.work().run(new BenchWorld(folder), watch);
    return new Measured(
        stage.word(),
        done.count(),
        done.counts(),
        watch.seconds(),
        watch.processorSeconds(),
        watch.ofJvm(),
        done.counts().containsKey(Work.PEAK)
            ? OptionalLong.of(done.counts().get(Work.PEAK))
            : Memory.peak());
  }
}
