package withers.launcher;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;

/**
 * A small checkout with the real launcher in it, and a PATH of its own: the tools that the launcher
 * may use, and a java and a Maven that are short scripts. What they would do is not tested here;
 * when they are called, and with what, is.
 */
final class Checkout {
  private static final List<String> TOOLS =
      List.of(
          "bash",
          "cat",
          "cksum",
          "cp",
          "cut",
          "dirname",
          "env",
          "find",
          "flock",
          "grep",
          "head",
          "ls",
          "mkdir",
          "mv",
          "ps",
          "readlink",
          "rm",
          "sed",
          "sha256sum",
          "sleep",
          "sort",
          "tail",
          "tr",
          "xargs");
  private static final List<String> SOURCES =
      List.of(
          "pom.xml",
          ".mvn/jvm.config",
          "shared/pom.xml",
          "shared/src/main/java/Shared.java",
          "ingest/pom.xml",
          "reconcile/pom.xml",
          "report/pom.xml",
          "report/src/main/java/Report.java",
          "report/src/main/resources/a name with spaces.txt",
          "fixtures/demo/workspace/withers.yaml",
          "fixtures/demo/2026-09/coast-register-2026-09-01.csv",
          "fixtures/demo/2026-09/garrowness-stays-2026-08-31.csv");

  private final Path root;
  private final Path tools;
  private final Map<String, String> environment = new TreeMap<>();

  /**
   * Lays the checkout out, with a JDK 17 and Maven 3.8.7 on its PATH.
   *
   * @param folder an empty folder
   */
  Checkout(Path folder) throws IOException {
    root = Files.createDirectories(folder.resolve("check out"));
    tools = Files.createDirectories(folder.resolve("bin"));
    environment.put("PATH", tools.toString());
    Files.copy(Path.of("..", "withers"), launcher());
    executable(launcher());
    for (String source : SOURCES) {
      write(source, "as first written");
    }
    for (String tool : TOOLS) {
      write(tools.resolve(tool), "#!/bin/sh\nexec " + find(tool) + " \"$@\"\n");
    }
    java("17.0.1");
    script("javac", "exit 0");
    maven("3.8.7", "");
  }

  Path root() {
    return root;
  }

  Path launcher() {
    return root.resolve("withers");
  }

  /**
   * Puts a java of this version on the PATH; it prints its folder and its arguments, a line each,
   * and leaves an empty archive of classes where one is asked for.
   */
  void java(String version) throws IOException {
    script("java", javaOf(version));
  }

  /** The same in a folder of its own, which becomes JAVA_HOME. */
  void javaHome(String version) throws IOException {
    Path home = root.resolveSibling("jdk");
    Files.createDirectories(home.resolve("bin"));
    write(home.resolve("bin/java"), "#!/usr/bin/env bash\n" + javaOf(version));
    write(home.resolve("bin/javac"), "#!/usr/bin/env bash\n");
    environment.put("JAVA_HOME", home.toString());
  }

  private static String javaOf(String version) {
    return """
        if [ "$1" = -version ]; then echo 'openjdk version "%s" 2025-04-15' >&2; exit; fi
        case $1 in -XX:ArchiveClassesAtExit=*) : >"${1#*=}" ;; esac
        printf '%%s\\n' "in $PWD" "$@"
        exit ${EXIT_OF_JAVA:-0}
        """
        .formatted(version);
  }

  /** Puts a Maven of this version on the PATH, which does {@code first} before it builds. */
  void maven(String version, String first) throws IOException {
    script(
        "mvn",
        """
        if [ "$1" = -v ]; then echo "Apache Maven %s (abc)"; exit; fi
        echo "$@" >>builds
        echo "[INFO] building"
        %s
        app=report/target/launcher/withers-app
        mkdir -p $app/lib
        cat report/src/main/java/Report.java >$app/withers.jar
        """
            .formatted(version, first));
  }

  void without(String tool) throws IOException {
    Files.delete(tools.resolve(tool));
  }

  void set(String variable, String value) {
    environment.put(variable, value);
  }

  void write(String source, String text) throws IOException {
    write(root.resolve(source), text);
  }

  /** The arguments of each build that Maven was asked for. */
  List<String> builds() throws IOException {
    Path builds = root.resolve("builds");
    return Files.exists(builds) ? Files.readAllLines(builds) : List.of();
  }

  /** Runs the launcher in the checkout to its end. */
  Run run(String... args) throws IOException, InterruptedException {
    return finish(start(args));
  }

  /** Runs it by another path, from another folder. */
  Run runFrom(Path folder, Path launcher) throws IOException, InterruptedException {
    return finish(command(launcher).directory(folder.toFile()).start());
  }

  /** Starts it and leaves it running. */
  Process start(String... args) throws IOException {
    ProcessBuilder command = command(launcher());
    command.command().addAll(List.of(args));
    return command.start();
  }

  static Run finish(Process process) throws IOException, InterruptedException {
    List<String> out = process.inputReader(UTF_8).lines().toList();
    List<String> err = process.errorReader(UTF_8).lines().toList();
    if (!process.waitFor(20, TimeUnit.SECONDS)) {
      throw new IOException("Expected the launcher to end within 20 s, but it still runs");
    }
    return new Run(process.exitValue(), out, err);
  }

  private ProcessBuilder command(Path launcher) {
    ProcessBuilder builder = new ProcessBuilder();
    builder.command().add(launcher.toString());
    builder.directory(root.toFile());
    builder.environment().clear();
    builder.environment().putAll(environment);
    return builder;
  }

  private void script(String name, String body) throws IOException {
    write(tools.resolve(name), "#!/usr/bin/env bash\n" + body);
  }

  private static void write(Path file, String text) throws IOException {
    Files.createDirectories(file.getParent());
    Files.writeString(file, text, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING);
    executable(file);
  }

  private static void executable(Path file) throws IOException {
    if (!file.toFile().setExecutable(true)) {
      throw new IOException("Expected to make " + file + " executable, but could not");
    }
  }

  private static Path find(String tool) throws IOException {
    for (String folder : System.getenv("PATH").split(":")) {
      Path file = Path.of(folder, tool);
      if (Files.isExecutable(file)) {
        return file;
      }
    }
    throw new IOException("Expected " + tool + " on the PATH, but found none");
  }

  /** How a start ended: its exit code and the lines it wrote. */
  record Run(int code, List<String> out, List<String> err) {}
}
