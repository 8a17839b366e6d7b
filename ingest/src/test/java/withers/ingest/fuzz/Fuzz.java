package withers.ingest.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * Fuzzes targets one after another, each in a JVM of its own with a small heap, and ends with 1
 * when one of them found anything. See docs/fuzzing.md.
 */
final class Fuzz {

  private static final String WHAT_IS_WATCHED =
      "withers.**:org.apache.commons.csv.**:org.apache.commons.compress.**"
          + ":org.dhatim.fastexcel.**:com.fasterxml.aalto.**:org.snakeyaml.engine.**";

  private final Target target;
  private final Path folder;
  private final Path findings;

  private Fuzz(Target target) throws IOException {
    this.target = target;
    this.folder = Files.createDirectories(Path.of("target", "fuzz", target.word(), "corpus"));
    this.findings = Files.createDirectories(Path.of("target", "fuzz", target.word(), "findings"));
  }

  /**
   * Fuzzes.
   *
   * @param args seconds for each target, then the targets' names, or {@code all}
   */
  public static void main(String[] args) throws IOException, InterruptedException {
    List<Target> found = new ArrayList<>();
    for (Target target : targets(Arrays.asList(args).subList(1, args.length))) {
      if (new Fuzz(target).harms(args[0])) {
        found.add(target);
      }
    }
    if (!found.isEmpty()) {
      throw new IllegalStateException("Expected no findings, but found some: " + found);
    }
  }

  private static List<Target> targets(List<String> words) {
    return words.contains("all")
        ? List.of(Target.values())
        : Arrays.stream(Target.values()).filter(one -> words.contains(one.word())).toList();
  }

  private boolean harms(String seconds) throws IOException, InterruptedException {
    List<String> command = command();
    command.addAll(search(seconds));
    int status = new ProcessBuilder(command).inheritIO().start().waitFor();
    try (Stream<Path> files = Files.list(findings)) {
      return status != 0 || files.findAny().isPresent();
    }
  }

  private List<String> command() {
    return new ArrayList<>(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Xmx512m",
            "-XX:+UseSerialGC",
            "-XX:+IgnoreUnrecognizedVMOptions",
            "-XX:+EnableDynamicAgentLoading",
            "-Duser.language=en",
            "-Duser.timezone=UTC",
            "-cp",
            System.getProperty("java.class.path"),
            "com.code_intelligence.jazzer.Jazzer",
            "--target_class=" + target.entry().getName(),
            "--instrumentation_includes=" + WHAT_IS_WATCHED,
            "--custom_hook_includes=" + WHAT_IS_WATCHED,
            // Else the fuzzer would learn to write our own messages.
            "--instrumentation_excludes=withers.ingest.fuzz.**",
            "--reproducer_path=" + findings,
            "-artifact_prefix=" + findings + "/",
            "-timeout=20",
            "-max_len=" + target.longest()));
  }

  private List<String> search(String seconds) {
    return List.of(
        "--keep_going=20",
        "-max_total_time=" + seconds,
        "-print_final_stats=1",
        folder.toString(),
        target.corpus().toString());
  }
}
