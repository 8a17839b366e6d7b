package withers.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import withers.contact.VaultUnavailableException;
import withers.id.SourceId;
import withers.log.LogDamagedException;
import withers.log.StaleParentException;
import withers.source.InputRefusedException;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CommandLineTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2031-03-01T23:30:00Z"), ZoneOffset.UTC);

  /** Fails as it is told. */
  private interface Failing {
    void fail() throws Exception;
  }

  @Command(
      name = "withers",
      subcommands = {InitCommand.class, TodayCommand.class, FailCommand.class})
  static final class Root {}

  @Command(name = "today", mixinStandardHelpOptions = true)
  static final class TodayCommand implements Callable<Integer> {
    private final Console console;
    @Mixin private WorkspaceOption workspace;
    @Mixin private AsOfOption asOf;
    @Mixin private JsonOption json;

    TodayCommand(Console console) {
      this.console = console;
    }

    @Override
    public Integer call() {
      console.print(asOf.in(workspace.open()) + (json.isJson() ? " as JSON" : ""));
      return ExitCode.DONE.number();
    }
  }

  @Command(name = "fail")
  static final class FailCommand implements Callable<Integer> {
    private final Failing failing;

    FailCommand(Failing failing) {
      this.failing = failing;
    }

    @Override
    public Integer call() throws Exception {
      failing.fail();
      return ExitCode.DONE.number();
    }
  }

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private Map<String, String> environment = Map.of();
  private Failing failing = () -> {};
  private Operator operator = Operator.NOBODY;

  @TempDir private Path temp;

  @Test
  void init_makes_a_workspace_and_says_what_and_what_next() {
    Path folder = temp.resolve("coast");

    assertThat(run("init", folder.toString(), "--zone", "Europe/Helsinki")).isZero();

    assertThat(out)
        .hasToString(
            "Made in %s:%n  withers.yaml%n  organisations.yaml%n  sources/README.md%n"
                .formatted(folder));
    assertThat(err)
        .hasToString(
            "Next: name the organisations in organisations.yaml and describe each source in sources/.%n"
                .formatted());
    assertThat(folder.resolve("withers.yaml"))
        .content()
        .contains("network: coast\n", "zone: Europe/Helsinki\n", "test-numbers: refused\n");
  }

  @Test
  void init_again_says_that_nothing_was_missing() {
    run("init", temp.toString());
    out.reset();
    err.reset();

    assertThat(run("init", temp.toString())).isZero();

    assertThat(err.size()).isZero();
    assertThat(out).hasToString("Nothing was missing in %s%n".formatted(temp));
  }

  @Test
  void init_in_a_folder_with_other_files_changes_nothing() throws IOException {
    Files.writeString(temp.resolve("letter.txt"), "Dear all");

    assertThat(run("init", temp.toString())).isEqualTo(3);

    assertThat(err)
        .hasToString(
            "withers: Expected a new or empty folder, but found something in it (%s): nothing was changed; choose another folder%n"
                .formatted(temp));
    assertThat(out.size()).isZero();
  }

  @Test
  void init_refuses_answers_that_are_none() {
    assertRefusedUsage(
        "withers: Invalid value for option '--zone': Expected a time zone such as Europe/Lisbon or"
            + " America/New_York, but found \"Lisbon\"%n\"withers init --help\" explains it.%n",
        "init", temp.toString(), "--zone", "Lisbon");
    assertRefusedUsage(
        "withers: Invalid value for option '--test-numbers': Expected one of refused, accepted, but found \"no\"%n"
            + "\"withers init --help\" explains it.%n",
        "init", temp.toString(), "--test-numbers", "no");
    assertRefusedUsage(
        "withers: Expected a country of two capital letters such as PT or US, or ZZ for none, but found \"pt\"%n"
            + "\"withers init --help\" explains it.%n",
        "init", temp.toString(), "--phone-region", "pt");
    assertThat(temp).isEmptyDirectory();
  }

  @Test
  void a_misspelt_option_or_command_gets_a_suggestion() {
    assertRefusedUsage(
        "withers: Unknown option: '--networks'%nPossible solutions: --network%n\"withers init --help\" explains it.%n",
        "init", temp.toString(), "--networks");
    assertRefusedUsage(
        "withers: Unmatched argument at index 0: 'int'%nDid you mean: withers init?%n\"withers --help\" explains it.%n",
        "int");
  }

  @Test
  void every_help_shows_an_example() {
    UsageCheck.everyCommandShowsAnExample(
        WithersCommandLine.of(OnlyInit.class, factory(), console(), ErrorHandler.standard()));
  }

  @Command(name = "withers", subcommands = InitCommand.class)
  static final class OnlyInit {}

  @Test
  void help_goes_to_standard_output() {
    assertThat(run("init", "--help")).isZero();

    assertThat(out.toString(StandardCharsets.UTF_8))
        .startsWith("Usage: withers init [")
        .contains("--trace-errors");
    assertThat(err.size()).isZero();
  }

  @Test
  void the_day_is_the_workspaces_today_unless_another_is_given() {
    run("init", temp.toString(), "--zone", "Europe/Helsinki");
    out.reset();

    assertThat(run("today", "--workspace", temp.toString())).isZero();
    assertThat(run("today", "-w", temp.toString(), "--as-of", "2031-01-31", "--json")).isZero();

    assertThat(out).hasToString("2031-03-02%n2031-01-31 as JSON%n".formatted());
  }

  @Test
  void a_day_that_is_none_is_refused() {
    assertRefusedUsage(
        "withers: Invalid value for option '--as-of': Expected a date that exists, but found \"2031-02-29\"%n"
            + "\"withers today --help\" explains it.%n",
        "today", "--as-of", "2031-02-29");
  }

  @Test
  void the_variable_names_the_workspace_and_the_option_outranks_it() {
    run("init", temp.resolve("one").toString(), "--zone", "Europe/Helsinki");
    run("init", temp.resolve("two").toString(), "--zone", "America/New_York");
    out.reset();
    environment = Map.of("WITHERS_WORKSPACE", temp.resolve("one").toString());

    run("today");
    run("today", "-w", temp.resolve("two").toString());

    assertThat(out).hasToString("2031-03-02%n2031-03-01%n".formatted());
  }

  @Test
  void a_folder_that_is_no_workspace_is_a_mistake_of_configuration() {
    assertThat(run("today", "-w", temp.toString())).isEqualTo(3);

    assertThat(err)
        .hasToString(
            "withers: Expected a workspace, but found no withers.yaml (%s): name the workspace with --workspace DIR,"
                    .formatted(temp)
                + " or make one with \"withers init DIR\"%n".formatted());
  }

  @Test
  void known_errors_are_told_as_they_are() {
    assertFails(
        () -> {
          throw new InputRefusedException("Expected a header, but found none (a.csv, line 1)");
        },
        ExitCode.INPUT_REFUSED,
        "withers: Expected a header, but found none (a.csv, line 1)");
    assertFails(
        () -> {
          throw new LogDamagedException("Expected another checksum (chips, partition 3)");
        },
        ExitCode.STORAGE,
        "withers: Expected another checksum (chips, partition 3)");
    assertFails(
        () -> {
          throw new VaultUnavailableException("Expected the vault key, but found no file");
        },
        ExitCode.STORAGE,
        "withers: Expected the vault key, but found no file");
    assertFails(
        () -> {
          throw new StaleParentException(new SourceId("harbour"));
        },
        ExitCode.BUSY,
        "withers: Another import of harbour was committed meanwhile; compare again and repeat");
  }

  @Test
  void what_the_disk_refuses_is_told_in_words() {
    assertFails(
        () -> {
          throw new NoSuchFileException("inbox/a.csv");
        },
        ExitCode.STORAGE,
        "withers: Expected a file, but found none (inbox/a.csv)");
    assertFails(
        () -> {
          throw new UncheckedIOException(new AccessDeniedException("log/events.db"));
        },
        ExitCode.STORAGE,
        "withers: Expected access, but it was denied (log/events.db): check owner and permissions");
    assertFails(
        () -> {
          throw new FileSystemException("lists/a.html", null, "Read-only file system");
        },
        ExitCode.STORAGE,
        "withers: Expected a file that can be used, but found: Read-only file system (lists/a.html)");
    assertFails(
        () -> {
          throw new IOException("No space left on device");
        },
        ExitCode.STORAGE,
        "withers: Expected to read and write the workspace, but the system said: No space left on device");
  }

  @Test
  void a_fault_shows_where_it_arose_and_nothing_else() {
    failing =
        () -> {
          throw new IllegalStateException("Kim Quokka, 555-0101");
        };

    assertThat(run("fail")).isEqualTo(70);

    assertThat(err.toString(StandardCharsets.UTF_8))
        .matches(
            "withers: Expected this to work, but Withers itself failed \\(IllegalStateException,"
                + " CommandLineTest.java, line \\d+\\). Run it again with --trace-errors to see the way there.\\R");
  }

  @Test
  void the_way_to_a_fault_is_shown_on_request_without_messages() {
    failing =
        () -> {
          throw new IllegalStateException("Kim Quokka", new IOException("555-0101"));
        };

    assertThat(run("fail", "--trace-errors")).isEqualTo(70);

    assertThat(err.toString(StandardCharsets.UTF_8))
        .contains(
            "java.lang.IllegalStateException",
            "java.io.IOException",
            "    at withers.cli.CommandLineTest")
        .doesNotContain("Quokka", "555");
  }

  @Test
  void another_module_can_make_its_exceptions_known() {
    failing =
        () -> {
          throw new ArithmeticException("Expected a whole, but found a part");
        };

    int code =
        WithersCommandLine.of(
                Root.class,
                factory(),
                console(),
                ErrorHandler.standard().and(ArithmeticException.class, ExitCode.ATTENTION))
            .execute("fail");

    assertThat(code).isEqualTo(1);
    assertThat(err).hasToString("withers: Expected a whole, but found a part%n".formatted());
  }

  private void assertFails(Failing how, ExitCode code, String message) {
    failing = how;
    err.reset();

    assertThat(run("fail")).isEqualTo(code.number());

    assertThat(err).hasToString(message + System.lineSeparator());
    assertThat(out.size()).isZero();
  }

  private void assertRefusedUsage(String message, String... args) {
    err.reset();

    assertThat(run(args)).isEqualTo(2);

    assertThat(err).hasToString(String.format(Locale.ROOT, message));
    assertThat(out.size()).isZero();
  }

  private int run(String... args) {
    CommandLine line =
        WithersCommandLine.of(Root.class, factory(), console(), ErrorHandler.standard());
    return line.execute(args);
  }

  private CommandFactory factory() {
    return CommandFactory.handing(console(), CLOCK, new Environment(environment))
        .and(Operator.class, operator)
        .and(Failing.class, failing);
  }

  private Console console() {
    return new Console(
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8),
        false);
  }
}
