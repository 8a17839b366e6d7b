package withers.testing;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

/** Programs in a Java of their own, which can be killed. */
public final class AnotherJava {
  private static final int LONGEST_MINUTES = 2;

  private AnotherJava() {}

  /** Starts a program; what it says on standard error comes out here. */
  public static Process running(Class<?> main, String... arguments) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(
        List.of(
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-Dslf4j.internal.verbosity=ERROR",
            "-XX:+IgnoreUnrecognizedVMOptions",
            "--enable-native-access=ALL-UNNAMED",
            "--sun-misc-unsafe-memory-access=allow",
            "-cp",
            System.getProperty("java.class.path"),
            main.getName()));
    command.addAll(List.of(arguments));
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    CompletableFuture.delayedExecutor(LONGEST_MINUTES, TimeUnit.MINUTES)
        .execute(process::destroyForcibly); // who waits for its words waits no longer
    return process;
  }
}
