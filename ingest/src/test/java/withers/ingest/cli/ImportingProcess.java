package withers.ingest.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import withers.cli.Console;
import withers.ingest.ImportStep;
import withers.workspace.Workspace;

/**
 * Another process that imports what is in a workspace's inbox, says each step that it comes to, and
 * waits at one of them, if asked to, until it is killed.
 */
final class ImportingProcess {

  private static final String NOWHERE = "nowhere";
  private static final String DONE = "done";
  private static final int SMALL_BATCH = 500;

  private final Process process;
  private final BufferedReader said;

  private ImportingProcess(Process process) {
    this.process = process;
    this.said =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  static ImportingProcess start(TestWorkspace workspace) throws IOException {
    return start(workspace, NOWHERE);
  }

  static ImportingProcess stoppingAt(TestWorkspace workspace, ImportStep step) throws IOException {
    return start(workspace, step.name());
  }

  private static ImportingProcess start(TestWorkspace workspace, String stop) throws IOException {
    return new ImportingProcess(
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+IgnoreUnrecognizedVMOptions",
                "--enable-native-access=ALL-UNNAMED",
                "--sun-misc-unsafe-memory-access=allow",
                "-cp",
                System.getProperty("java.class.path"),
                ImportingProcess.class.getName(),
                workspace.root().toString(),
                stop)
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start());
  }

  /** Waits until the process has come to a step, and returns whether it did. */
  boolean comesTo(ImportStep step) throws IOException {
    return says(step.name());
  }

  boolean isDone() throws IOException {
    return says(DONE);
  }

  private boolean says(String word) throws IOException {
    String line = said.readLine();
    while (line != null && !line.equals(word)) {
      line = said.readLine();
    }
    return line != null;
  }

  /** Lets the process run on for a while, or to its end. */
  void runsFor(long nanos) throws InterruptedException {
    process.waitFor(nanos, TimeUnit.NANOSECONDS);
  }

  /** Ends it as a power cut would: SIGKILL where signals exist. */
  void kill() {
    process.destroyForcibly().onExit().join();
  }

  public static void main(String... args) throws IOException {
    Workspace workspace = Workspace.open(Path.of(args[0]), TestWorkspace.CLOCK);
    Console console = new Console(System.out, System.err, false);
    Ingester ingester =
        new Ingester(
            workspace, console, step -> say(step.name(), args[1]), SMALL_BATCH, time -> {});
    workspace.whileLocked("ingest", () -> ingester.run(Ingester.Request.INBOX));
    say(DONE, args[1]);
  }

  private static void say(String step, String stop) {
    System.out.println(step);
    if (step.equals(stop)) {
      waitToBeKilled();
    }
  }

  private static void waitToBeKilled() {
    try {
      while (System.in.read() >= 0) {
        // Nobody writes: this ends with the process.
      }
    } catch (IOException closed) {
      throw new java.io.UncheckedIOException(closed);
    }
  }
}
