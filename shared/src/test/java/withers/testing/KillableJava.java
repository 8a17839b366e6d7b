package withers.testing;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import withers.point.Point;
import withers.point.Points;

/**
 * A program in a Java of its own that says each point that it comes to, and waits at one of them,
 * if asked to, until it is killed: what it does there is done, and what comes after it is not
 * begun.
 */
public final class KillableJava {
  /** A name of no point: the program waits nowhere. */
  public static final String NOWHERE = "nowhere";

  private final Process process;
  private final BufferedReader said;
  private final List<String> lines = Collections.synchronizedList(new ArrayList<>());

  private KillableJava(Process process) {
    this.process = process;
    this.said =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  /**
   * Starts a program.
   *
   * @param main has to hand {@link #waitingAt} to what it does
   */
  public static KillableJava start(Class<?> main, String... arguments) throws IOException {
    return new KillableJava(AnotherJava.running(main, arguments));
  }

  /** In the program: says points, and waits at the one of this name. */
  public static Points waitingAt(String name) {
    return point -> {
      System.out.println(point.name());
      if (point.name().equals(name)) {
        waitToBeKilled();
      }
    };
  }

  /** Or to be told to go on. */
  private static void waitToBeKilled() {
    try {
      System.in.read();
    } catch (IOException closed) {
      throw new UncheckedIOException(closed);
    }
  }

  /** Waits until the program has come to a point, and returns whether it did. */
  public boolean comesTo(Point point) throws IOException {
    return says(line -> line.equals(point.name()));
  }

  /** Waits until it has said a line with these words, and returns whether it did. */
  public boolean says(String words) throws IOException {
    return says(line -> line.contains(words));
  }

  private boolean says(Predicate<String> wanted) throws IOException {
    String line = said.readLine();
    while (line != null) {
      lines.add(line);
      if (wanted.test(line)) {
        return true;
      }
      line = said.readLine();
    }
    return false;
  }

  /** All lines that were waited for, and those before them. */
  public List<String> lines() {
    return List.copyOf(lines);
  }

  /** Has it stand still, as a machine that is frozen: SIGSTOP. */
  public void freeze() throws IOException, InterruptedException {
    signal("STOP");
  }

  /** Has it go on, from where it waits too. */
  public void thaw() throws IOException, InterruptedException {
    signal("CONT");
    process.getOutputStream().write('\n');
    process.getOutputStream().flush();
  }

  private void signal(String name) throws IOException, InterruptedException {
    new ProcessBuilder("kill", "-" + name, String.valueOf(process.pid())).start().waitFor();
  }

  /** Waits until it has ended by itself, and returns whether it ended well. */
  public boolean ends() throws IOException, InterruptedException {
    says(line -> false);
    return process.waitFor() == 0;
  }

  /** Lets the program run on for a while, or to its end. */
  public void runsFor(long nanos) throws InterruptedException {
    process.waitFor(nanos, TimeUnit.NANOSECONDS);
  }

  /** Ends it as a power cut would: SIGKILL where signals exist. */
  public void kill() {
    process.destroyForcibly().onExit().join();
  }
}
