package withers.launcher;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withers.launcher.Checkout.Run;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Timeout(
    value = 60,
    threadMode = Timeout.ThreadMode.SEPARATE_THREAD) // opening a pipe can't be interrupted
class LauncherTest {
  private static final String BUILDING =
      "withers: building Withers (first start or changed sources), about a minute ...";
  private static final String WAITING =
      "withers: waiting for another start that is building Withers ...";

  @TempDir private Path folder;
  private Checkout checkout;

  @BeforeEach
  void layOut() throws IOException {
    checkout = new Checkout(folder.toRealPath());
  }

  @Test
  void first_start_builds_without_tests_and_checks_and_says_so_on_standard_error_alone()
      throws Exception {
    Run run = checkout.run("trace", "two words");

    assertThat(run.code()).isZero();
    assertThat(run.err()).containsExactly(BUILDING);
    assertThat(run.out()).startsWith("in " + checkout.root());
    assertThat(run.out()).endsWith("withers.report.Main", "trace", "two words");
    assertThat(checkout.builds())
        .containsExactly(
            "-B -DskipChecks -Dmaven.test.skip=true -Dbuild.folder=target/launcher package");
  }

  @Test
  void unchanged_sources_do_not_build() throws Exception {
    checkout.run();
    Path source = checkout.root().resolve("shared/src/main/java/Shared.java");
    Files.setLastModifiedTime(source, FileTime.fromMillis(0));

    Run run = checkout.run();

    assertThat(run.err()).isEmpty();
    assertThat(checkout.builds()).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "pom.xml",
        "ingest/pom.xml",
        ".mvn/jvm.config",
        "shared/src/main/java/Shared.java",
        "report/src/main/resources/a name with spaces.txt",
        "reconcile/src/main/java/New.java"
      })
  void changed_and_new_sources_build_again(String source) throws Exception {
    checkout.run();
    checkout.write(source, "as changed later");

    assertThat(checkout.run().err()).containsExactly(BUILDING);
    assertThat(checkout.run().err()).isEmpty();
    assertThat(checkout.builds()).hasSize(2);
  }

  @Test
  void a_renamed_source_builds_again() throws Exception {
    checkout.run();
    Path source = checkout.root().resolve("shared/src/main/java/Shared.java");
    Files.move(source, source.resolveSibling("Renamed.java"));

    assertThat(checkout.run().err()).containsExactly(BUILDING);
  }

  @Test
  void tests_and_documents_do_not_build() throws Exception {
    checkout.run();
    checkout.write("shared/src/test/java/SharedTest.java", "a test");
    checkout.write("README.md", "a document");

    assertThat(checkout.run().err()).isEmpty();
  }

  @Test
  void a_running_application_keeps_its_jar_through_the_next_build() throws Exception {
    Path before = jar(checkout.run());
    checkout.write("report/src/main/java/Report.java", "as changed later");
    Path after = jar(checkout.run());

    assertThat(before).hasContent("as first written");
    assertThat(after).hasContent("as changed later");
  }

  @Test
  void old_builds_are_cleared_away_but_for_two() throws Exception {
    for (int i = 0; i < 5; i++) {
      checkout.write("pom.xml", "change " + i);
      checkout.run();
    }

    try (var kept = Files.list(checkout.root().resolve("report/target/withers-start"))) {
      assertThat(kept).hasSize(3);
    }
  }

  @Test
  void works_from_another_folder_and_by_symbolic_links() throws Exception {
    Files.createSymbolicLink(folder.resolve("link"), checkout.launcher());
    Path relative = Files.createSymbolicLink(folder.resolve("relative"), Path.of("link"));
    Path elsewhere = Files.createDirectories(folder.toRealPath().resolve("elsewhere"));

    Run run = checkout.runFrom(elsewhere, relative);

    assertThat(run.out()).startsWith("in " + elsewhere);
    assertThat(jar(run)).startsWith(checkout.root()).hasContent("as first written");
    assertThat(checkout.builds()).hasSize(1);
  }

  @Test
  void options_for_the_JVM_come_before_the_class_path() throws Exception {
    checkout.set("WITHERS_JAVA_OPTS", "-Xmx64m -ea");

    assertThat(checkout.run("x").out()).containsSubsequence("-Xmx64m", "-ea", "-cp", "x");
  }

  @Test
  void a_long_command_gets_the_collector_that_does_least_work_unless_one_is_asked_for()
      throws Exception {
    assertThat(checkout.run("reconcile").out()).contains("-XX:+UseParallelGC", "-XX:NewRatio=4");
    assertThat(checkout.run("trace", "1").out())
        .doesNotContain("-XX:+UseParallelGC", "-XX:NewRatio");

    checkout.set("WITHERS_JAVA_OPTS", "-Xmx64m -XX:+UseSerialGC");
    assertThat(checkout.run("reconcile").out())
        .contains("-XX:+UseSerialGC")
        .doesNotContain("-XX:+UseParallelGC", "-XX:NewRatio");
  }

  @Test
  void the_exit_code_is_the_application_s() throws Exception {
    checkout.set("EXIT_OF_JAVA", "3");

    assertThat(checkout.run().code()).isEqualTo(3);
  }

  @Test
  void only_a_java_that_warns_of_Unsafe_is_told_to_allow_it() throws Exception {
    assertThat(checkout.run().out()).doesNotContain("--sun-misc-unsafe-memory-access=allow");

    checkout.java("25.0.3");
    assertThat(checkout.run().out()).contains("--sun-misc-unsafe-memory-access=allow");
  }

  @Test
  void starts_with_the_archive_of_classes_that_was_made_where_the_application_lies()
      throws Exception {
    Run run = checkout.run();
    assertThat(run.out())
        .containsSubsequence(
            "-XX:SharedArchiveFile=" + jar(run).resolveSibling("classes.jsa"), "-cp");

    Files.delete(jar(run).resolveSibling("classes.jsa"));
    assertThat(checkout.run().out()).noneMatch(option -> option.contains("SharedArchiveFile"));
  }

  @Test
  void a_java_that_makes_no_archive_does_without() throws Exception {
    checkout.set("EXIT_OF_JAVA", "1");
    assertThat(checkout.run().out()).noneMatch(option -> option.contains("SharedArchiveFile"));
  }

  @Test
  void short_commands_do_without_the_second_compiler() throws Exception {
    assertThat(checkout.run("--version").out()).contains("-XX:TieredStopAtLevel=1");
    assertThat(checkout.run("trace", "999").out()).contains("-XX:TieredStopAtLevel=1");
    assertThat(checkout.run("report").out()).contains("-XX:TieredStopAtLevel=1");
  }

  @Test
  void in_long_commands_the_second_compiler_waits_for_what_runs_often() throws Exception {
    String late = "-XX:Tier4InvocationThreshold=50000";
    for (String command : List.of("ingest", "reconcile", "schedule", "demo")) {
      assertThat(checkout.run(command).out())
          .contains(
              late,
              "-XX:Tier4MinInvocationThreshold=6000",
              "-XX:Tier4CompileThreshold=150000",
              "-XX:Tier4BackEdgeThreshold=400000")
          .doesNotContain("-XX:TieredStopAtLevel=1");
    }
    assertThat(checkout.run("report").out()).doesNotContain(late);

    checkout.set("WITHERS_JAVA_OPTS", "-XX:Tier4InvocationThreshold=5000");
    assertThat(checkout.run("ingest").out())
        .containsSubsequence(late, "-XX:Tier4InvocationThreshold=5000");
  }

  @Test
  void missing_java_is_told() throws Exception {
    checkout.without("java");

    refused(
        90,
        "withers: Expected Java 17 or newer, but found no java on the PATH. Install a JDK"
            + " (on Debian: apt-get install openjdk-17-jdk-headless), or set JAVA_HOME to one.");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1.8.0_392", "11.0.2", "16"})
  void old_java_is_told(String version) throws Exception {
    checkout.java(version);

    refused(
        90,
        "withers: Expected Java 17 or newer, but found %s (%s)."
                .formatted(
                    version.replaceFirst("^1\\.8", "8"), folder.toRealPath().resolve("bin/java"))
            + " Install a JDK 17 or newer, or set JAVA_HOME to one.");
  }

  @Test
  void JAVA_HOME_goes_before_the_PATH() throws Exception {
    checkout.java("11.0.2");
    checkout.javaHome("21");

    assertThat(checkout.run().code()).isZero();
  }

  @Test
  void JAVA_HOME_without_java_is_told() throws Exception {
    checkout.set("JAVA_HOME", "/nowhere");

    refused(
        90,
        "withers: Expected Java in JAVA_HOME, but found no /nowhere/bin/java. Set JAVA_HOME to a JDK"
            + " 17 or newer, or unset it to use the java on the PATH.");
  }

  @Test
  void a_runtime_without_a_compiler_is_told() throws Exception {
    checkout.without("javac");

    refused(
        90,
        "withers: Expected a JDK to build with, but found only a runtime (%s, and no javac on the PATH)."
                .formatted(folder.toRealPath().resolve("bin/java"))
            + " Install a JDK (on Debian: apt-get install openjdk-17-jdk-headless), or set JAVA_HOME"
            + " to one.");
  }

  @Test
  void missing_Maven_is_told() throws Exception {
    checkout.without("mvn");

    refused(
        91,
        "withers: Expected Maven 3.8 or newer to build with, but found no mvn on the PATH. Install"
            + " Maven (on Debian: apt-get install maven).");
  }

  @Test
  void old_Maven_is_told() throws Exception {
    checkout.maven("3.6.3", "");

    refused(
        91,
        "withers: Expected Maven 3.8 or newer to build with, but found 3.6.3 (%s). Install a newer Maven."
            .formatted(folder.toRealPath().resolve("bin/mvn")));
  }

  @Test
  void what_is_built_needs_neither_Maven_nor_a_compiler() throws Exception {
    checkout.run();
    checkout.without("mvn");
    checkout.without("javac");

    assertThat(checkout.run().code()).isZero();
  }

  @Test
  void a_failed_build_shows_its_end_and_where_all_of_it_is_and_is_tried_again() throws Exception {
    checkout.maven("3.8.7", "echo '[ERROR] no such symbol'; exit 1");

    Run failed = checkout.run();

    Path log = checkout.root().resolve("report/target/withers-build.log");
    assertThat(failed.code()).isEqualTo(92);
    assertThat(failed.out()).isEmpty();
    assertThat(failed.err())
        .containsExactly(
            BUILDING,
            "[INFO] building",
            "[ERROR] no such symbol",
            "withers: Expected the build to succeed, but it failed; the last lines of its log are above."
                + " The whole log is in "
                + log
                + ".");
    assertThat(log).hasContent("[INFO] building\n[ERROR] no such symbol\n");

    checkout.maven("3.8.7", "");
    assertThat(checkout.run().code()).isZero();
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void two_starts_at_once_build_once(boolean withFlock) throws Exception {
    if (!withFlock) {
      checkout.without("flock");
    }
    Path gate = pipe("gate");
    checkout.maven("3.8.7", "read -r _ <'" + gate + "'");

    Process first = checkout.start();
    assertThat(firstLine(first)).isEqualTo(BUILDING);
    Process second = checkout.start();
    assertThat(firstLine(second)).isEqualTo(WAITING);
    Files.writeString(gate, "go on\n");

    assertThat(Checkout.finish(first).code()).isZero();
    assertThat(Checkout.finish(second).code()).isZero();
    assertThat(checkout.builds()).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void a_lock_left_by_a_killed_start_does_not_hold_up_the_next(boolean withFlock) throws Exception {
    if (!withFlock) {
      checkout.without("flock");
    }
    Path started = pipe("started");
    Path gate = pipe("gate");
    checkout.maven("3.8.7", "echo yes >'" + started + "'; read -r _ <'" + gate + "'");
    Process killed = checkout.start();
    assertThat(Files.readAllLines(started)).containsExactly("yes");
    killed.destroyForcibly().waitFor();
    Files.writeString(gate, "go on\n");
    checkout.maven("3.8.7", "");

    Run run = checkout.run();

    assertThat(run.code()).isZero();
    assertThat(run.err()).contains(BUILDING);
  }

  private void refused(int code, String message) throws Exception {
    assertThat(checkout.run()).isEqualTo(new Run(code, List.of(), List.of(message)));
    assertThat(checkout.builds()).isEmpty();
  }

  private static Path jar(Run run) {
    return Path.of(run.out().get(run.out().indexOf("-cp") + 1));
  }

  private Path pipe(String name) throws Exception {
    Path pipe = folder.toRealPath().resolve(name);
    assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor()).isZero();
    return pipe;
  }

  private static String firstLine(Process process) throws IOException {
    BufferedReader err = process.errorReader(UTF_8);
    return err.readLine();
  }
}
