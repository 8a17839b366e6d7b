package withers.install;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The zip that the profile {@code dist} builds, and a computer to unpack it on: an empty home, and
 * a PATH that leads to ordinary programs and to neither Java nor Maven.
 *
 * @param file the zip
 * @param home where it is unpacked
 */
record Zip(Path file, Path home) {
  /** A system property: where the zip is. Without it there is none to be tested. */
  static final String PROPERTY = "withers.zip";

  private static final List<String> PROGRAMS =
      List.of(
          "bash",
          "cat",
          "cp",
          "dirname",
          "env",
          "grep",
          "kill",
          "ls",
          "mkdir",
          "mv",
          "readlink",
          "rm",
          "script",
          "sed",
          "sh",
          "sleep",
          "uname",
          "unzip",
          "wc");

  /**
   * Puts the zip and the programs into a folder.
   *
   * @param folder an empty folder
   */
  static Zip on(Path folder) throws IOException {
    Path zip = Path.of(System.getProperty(PROPERTY));
    Path home = Files.createDirectories(folder.toRealPath().resolve("home"));
    Path programs = Files.createDirectories(home.resolveSibling("programs"));
    for (String name : PROGRAMS) {
      Optional<Path> program = find(name);
      if (program.isPresent()) { // kill is Bash's own in some places
        Files.createSymbolicLink(programs.resolve(name), program.get());
      }
    }
    return new Zip(Files.createSymbolicLink(home.resolve(zip.getFileName()), zip), home);
  }

  private static Optional<Path> find(String program) {
    return Stream.of(System.getenv("PATH").split(":"))
        .map(folder -> Path.of(folder, program))
        .filter(Files::isExecutable)
        .findFirst();
  }

  /** Everything that a process there is told by its environment. */
  Map<String, String> environment() {
    return new TreeMap<>(
        Map.of(
            "HOME",
            home.toString(),
            "PATH",
            home.resolveSibling("programs").toString(),
            "LANG",
            "C.UTF-8",
            "TERM",
            "dumb"));
  }

  /** A process in the home. */
  ProcessBuilder command(String... words) {
    ProcessBuilder builder = new ProcessBuilder(words).directory(home.toFile());
    builder.environment().clear();
    builder.environment().putAll(environment());
    return builder;
  }

  /** Unpacks it. */
  Path unpacked() throws IOException, InterruptedException {
    Run unzip = Run.of(command("unzip", "-q", file.toString()));
    if (unzip.code() != 0) {
      throw new IOException("Expected the zip to be unpacked, but: " + unzip.err());
    }
    String name = file.getFileName().toString();
    return home.resolve(name.substring(0, name.length() - ".zip".length()));
  }
}
