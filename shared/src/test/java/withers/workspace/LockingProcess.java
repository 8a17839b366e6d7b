package withers.workspace;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;

/**
 * Another process that takes a workspace's lock: says {@code held} or why not, then waits for a
 * line before it gives the lock back.
 */
final class LockingProcess implements AutoCloseable {
  private final Process process;
  private final BufferedReader said;

  private LockingProcess(Process process) {
    this.process = process;
    this.said =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  static LockingProcess start(Path workspace) throws IOException {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    return new LockingProcess(
        new ProcessBuilder(
                java,
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                LockingProcess.class.getName(),
                workspace.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start());
  }

  String says() throws IOException {
    return said.readLine();
  }

  long pid() {
    return process.pid();
  }

  void mayEnd() throws IOException, InterruptedException {
    process.getOutputStream().write('\n');
    process.getOutputStream().flush();
    process.waitFor();
  }

  /** Ends the process as a power cut would. */
  void kill() {
    process.destroyForcibly().onExit().join();
  }

  @Override
  public void close() {
    kill();
  }

  public static void main(String... args) throws IOException {
    Clock clock = Clock.fixed(Instant.parse("2031-03-01T01:30:00Z"), ZoneOffset.UTC);
    try (WorkspaceLock lock = Workspace.open(Path.of(args[0]), clock).lock("ingest")) {
      System.out.println(lock.isHeld() ? "held" : "lost");
      System.in.read();
    } catch (WorkspaceBusyException busy) {
      System.out.println("refused");
    }
  }
}
