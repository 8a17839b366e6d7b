package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import withers.cli.ExitCode;

/** The manual: judged by groff, which sets it, and by Bash, which completes with it. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ManualCommandTest {
  @TempDir private static Path folder;

  @BeforeAll
  static void write() {
    CommandRun run = CommandRun.of("manual", folder.toString());
    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
  }

  @Test
  void groff_sets_every_page_without_a_warning() throws Exception {
    assumeTrue(isOnPath("groff"), "groff is not installed");
    for (Path page : pages()) {
      assertThat(words("groff", "-man", "-Tutf8", "-ww", "-z", page.toString()))
          .as(page.toString())
          .isEmpty();
    }
  }

  @Test
  void each_command_has_a_page_with_each_of_its_options() throws Exception {
    assumeTrue(isOnPath("groff"), "groff is not installed");
    List<CommandLine> commands = commands(CommandRun.commandLine());
    assertThat(commands).hasSameSizeAs(pages());
    for (CommandLine command : commands) {
      String page = shown(command.getCommandSpec().qualifiedName("-"));
      assertThat(page).contains("NAME", "SYNOPSIS", "DESCRIPTION", "OPTIONS", "EXIT STATUS");
      assertThat(page).contains(options(command.getUsageMessage()));
    }
  }

  @Test
  void a_page_says_what_the_help_says() throws Exception {
    assumeTrue(isOnPath("groff"), "groff is not installed");
    assertThat(shown("withers-log-copy"))
        .contains("withers-log-copy - Copies an event log into the one that withers.yaml names")
        .contains("--from=embedded|FILE")
        .contains("  withers log copy --from embedded")
        .contains(ExitCode.BUSY.meaning())
        .contains("SEE ALSO", "withers-log(1)");
  }

  @Test
  void the_same_program_writes_the_same_manual(@TempDir Path again) throws Exception {
    CommandRun.of("manual", again.toString());

    for (Path file : files(folder)) {
      assertThat(again.resolve(folder.relativize(file).toString())).hasSameBinaryContentAs(file);
    }
  }

  @Test
  void bash_completes_commands_and_options() throws Exception {
    assertThat(completed("withers", "rec")).containsExactly("reconcile");
    assertThat(completed("withers", "log", "")).contains("copy");
    assertThat(completed("withers", "report", "--se")).containsExactly("--send");
    assertThat(completed("withers", "init", "--phone")).containsExactly("--phone-region");
  }

  /** What Bash's own function answers for a line of which the last word is being typed. */
  private static List<String> completed(String... line) throws Exception {
    String script =
        """
        source '%s'
        COMP_WORDS=(%s); COMP_CWORD=%d; COMP_LINE='%s'; COMP_POINT=${#COMP_LINE}
        exec 2>&-  # outside of a completion compopt has nothing to set, and says so
        eval "$(complete -p withers | sed 's/.*-F \\([^ ]*\\).*/\\1/')"
        printf '%%s\\n' "${COMPREPLY[@]}"
        """
            .formatted(
                folder.resolve("completion/withers.bash"),
                String.join(" ", Stream.of(line).map(word -> "'" + word + "'").toList()),
                line.length - 1,
                String.join(" ", line));
    return words("bash", "--norc", "-c", script).lines().map(String::strip).toList();
  }

  private static List<CommandLine> commands(CommandLine root) {
    List<CommandLine> all = new ArrayList<>(List.of(root));
    root.getSubcommands().values().forEach(inner -> all.addAll(commands(inner)));
    return all;
  }

  private static List<String> options(String help) {
    return help.lines()
        .filter(line -> line.matches(" +(-\\w, +)?--.*"))
        .map(line -> line.replaceFirst(".*?(--[a-z-]+).*", "$1"))
        .toList();
  }

  /** The page as a reader sees it, without the marks of bold letters. */
  private static String shown(String page) throws Exception {
    String file = folder.resolve("man/man1/" + page + ".1").toString();
    return words("groff", "-man", "-Tutf8", "-P-cbou", "-rLL=400n", "-rHY=0", file);
  }

  private static String words(String... command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    return said;
  }

  private static boolean isOnPath(String program) {
    return Stream.of(System.getenv("PATH").split(":"))
        .anyMatch(place -> Files.isExecutable(Path.of(place, program)));
  }

  private static List<Path> pages() throws IOException {
    List<Path> pages = files(folder.resolve("man"));
    assertThat(pages).hasSizeGreaterThan(25);
    return pages;
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).sorted().toList();
    }
  }
}
