package withers.ingest.cli;

import java.io.IOException;
import java.nio.file.Path;
import withers.cli.Console;
import withers.point.Point;
import withers.testing.KillableJava;
import withers.workspace.Workspace;

/** Another process that imports what is in a workspace's inbox, in small batches. */
final class ImportingProcess {
  private static final int SMALL_BATCH = 500;

  private ImportingProcess() {}

  static KillableJava start(TestWorkspace workspace) throws IOException {
    return start(workspace, KillableJava.NOWHERE);
  }

  static KillableJava stoppingAt(TestWorkspace workspace, Point point) throws IOException {
    return start(workspace, point.name());
  }

  private static KillableJava start(TestWorkspace workspace, String stop) throws IOException {
    return KillableJava.start(ImportingProcess.class, workspace.root().toString(), stop);
  }

  public static void main(String... args) {
    Workspace workspace = Workspace.open(Path.of(args[0]), TestWorkspace.CLOCK);
    Console console = new Console(System.out, System.err, false);
    Ingester ingester =
        new Ingester(workspace, console, KillableJava.waitingAt(args[1]), SMALL_BATCH, time -> {});
    workspace.whileLocked("ingest", () -> ingester.run(Ingester.Request.INBOX));
  }
}
