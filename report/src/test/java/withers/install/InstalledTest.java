package withers.install;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Properties;
import java.util.concurrent.TimeUnit;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What is in the zip, and how its launcher starts it. */
@Tag("install")
@EnabledIfSystemProperty(
    named = Zip.PROPERTY,
    matches = ".+",
    disabledReason = "the profile dist builds a zip")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Timeout(value = 5, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class InstalledTest {
  private static final String RUNTIME = "runtime/Linux-x86_64";

  @TempDir private static Path folder;
  private static Zip zip;
  private static Path installed;

  @BeforeAll
  static void unpack() throws Exception {
    zip = Zip.on(folder);
    installed = zip.unpacked();
  }

  @Test
  void it_starts_with_its_own_runtime_from_anywhere_and_by_a_link() throws Exception {
    Path link = Files.createSymbolicLink(zip.home().resolve("w"), launcher());

    assertThat(Run.of(zip.command(launcher().toString(), "--version")).out())
        .startsWith("Withers ");
    assertThat(Run.of(zip.command(link.toString(), "--version")).out()).startsWith("Withers ");
  }

  @Test
  void without_a_runtime_for_this_system_it_takes_the_computer_s_java() throws Exception {
    Path elsewhere = withoutRuntime("elsewhere");
    ProcessBuilder command = zip.command(elsewhere.resolve("bin/withers").toString(), "--version");
    command.environment().put("JAVA_HOME", System.getProperty("java.home"));

    assertThat(Run.of(command)).isEqualTo(new Run(0, version(), ""));
  }

  @Test
  void without_any_java_it_says_so() throws Exception {
    Path elsewhere = withoutRuntime("nowhere");

    assertThat(Run.of(zip.command(elsewhere.resolve("bin/withers").toString(), "--version")))
        .isEqualTo(
            new Run(
                90,
                "",
                "withers: Expected Java 17 or newer, but found no java on the PATH. Install one, or set JAVA_HOME to it.\n"));
  }

  @Test
  void an_old_java_is_told() throws Exception {
    Path elsewhere = withoutRuntime("old");
    Path java = Files.createDirectories(folder.resolve("jdk-11/bin")).resolve("java");
    Files.writeString(java, "#!/bin/sh\nexit 1\n");
    Files.setPosixFilePermissions(java, PosixFilePermissions.fromString("rwxr-xr-x"));
    Files.writeString(folder.resolve("jdk-11/release"), "JAVA_VERSION=\"11.0.2\"\n");
    ProcessBuilder command = zip.command(elsewhere.resolve("bin/withers").toString(), "--version");
    command.environment().put("JAVA_HOME", folder.resolve("jdk-11").toString());

    assertThat(Run.of(command))
        .isEqualTo(
            new Run(
                90,
                "",
                "withers: Expected Java 17 or newer, but found 11 (%s). Install a newer one, or set JAVA_HOME to it.\n"
                    .formatted(java)));
  }

  @Test
  void options_for_the_JVM_and_the_exit_code_go_through() throws Exception {
    ProcessBuilder command = zip.command(launcher().toString(), "trace", "1");
    command.environment().put("WITHERS_JAVA_OPTS", "-Xmx64m -Dwithers.terminal=false");

    assertThat(Run.of(command).code()).isEqualTo(3);
    command.environment().put("WITHERS_JAVA_OPTS", "-Xno-such-option");
    assertThat(Run.of(command).err()).contains("-Xno-such-option");
  }

  @Test
  void somebody_at_a_terminal_is_asked() throws Exception {
    Path answers = folder.resolve("answers");
    Files.writeString(
        answers, "Dune Network\nEurope/Lisbon\nPT\n\n\nclinic Dune Clinic\n\nnightly\n");
    ProcessBuilder command = zip.command("script", "-qec", launcher() + " init dunes", "/dev/null");

    Run run = Run.of(command.redirectInput(answers.toFile()));

    assertThat(run.code()).as(run.out()).isZero();
    assertThat(run.out()).contains("The network's name, as lists and mails show it [dunes]:");
    assertThat(zip.home().resolve("dunes/withers.yaml"))
        .content()
        .contains("network: 'Dune Network'", "zone: Europe/Lisbon", "nightly: {cron: 30 2 * * *");
  }

  @Test
  void the_launcher_for_Windows_starts_the_same_with_the_same_options() throws Exception {
    String cmd = Files.readString(installed.resolve("bin/withers.cmd"));
    String sh = Files.readString(launcher());

    assertThat(cmd.lines().count()).isEqualTo(cmd.split("\r\n").length);
    for (String option :
        List.of(
            "-Dfile.encoding=UTF-8",
            "-Dstdout.encoding=UTF-8",
            "-Dwithers.home=",
            "-Dwithers.command=",
            "-XX:+UseParallelGC -XX:NewRatio=4",
            "-XX:Tier4InvocationThreshold=50000",
            "-XX:Tier4MinInvocationThreshold=6000",
            "-XX:Tier4CompileThreshold=150000",
            "-XX:Tier4BackEdgeThreshold=400000",
            "withers.report.Main")) {
      assertThat(cmd).contains(option);
      assertThat(sh).contains(option);
    }
  }

  @Test
  void the_bill_of_materials_names_every_library_and_its_licence() throws Exception {
    JsonNode bill = JsonMapper.shared().readTree(installed.resolve("sbom.json").toFile());
    List<String> named = new ArrayList<>();
    for (JsonNode part : bill.get("components")) {
      named.add(part.get("name").asString() + "-" + part.get("version").asString() + ".jar");
      if (!part.get("group").asString().equals("withers")) {
        assertThat(part.get("licenses")).as(part.get("name").asString()).isNotEmpty();
      }
    }

    assertThat(bill.get("bomFormat").asString()).isEqualTo("CycloneDX");
    assertThat(named).containsExactlyInAnyOrderElementsOf(names(installed.resolve("app/lib")));
  }

  @Test
  void the_page_of_notices_has_each_library_with_a_licence_a_source_and_what_its_jar_carries()
      throws Exception {
    String page = Files.readString(installed.resolve("NOTICES.txt"));
    List<MatchResult> entries =
        Pattern.compile(
                "(?m)^(\\S+\\.jar) \\(\\S+\\)\n"
                    + "  licence: \\S.+\n"
                    + "  source: \\S+\n"
                    + "((?:  carries: .+\n"
                    + ")+)\n")
            .matcher(page)
            .results()
            .toList();

    assertThat(entries)
        .extracting(entry -> entry.group(1))
        .containsExactlyElementsOf(
            names(installed.resolve("app/lib")).stream()
                .filter(name -> !name.matches("(shared|ingest|reconcile)-.+"))
                .toList());
    for (MatchResult entry : entries) {
      assertThat(carried(entry.group(1)).stream().allMatch(entry.group(2)::contains))
          .as(entry.group())
          .isTrue();
    }
    assertThat(page).contains("\nText 1\n", "Apache License", "\nText 10\n");
  }

  /** As {@code jar --list} tells, the JDK's own. */
  private static List<String> carried(String jar) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
    ToolProvider.findFirst("jar")
        .orElseThrow()
        .run(stream, stream, "--list", "--file", installed.resolve("app/lib/" + jar).toString());
    return out.toString(StandardCharsets.UTF_8)
        .lines()
        .filter(name -> name.matches("(META-INF/)?(LICENSE|NOTICE)(\\.txt|\\.md)?"))
        .toList();
  }

  /** Against the JDK's own jdeps. */
  @Test
  void the_runtime_has_every_module_that_the_classes_name() throws Exception {
    Properties release = new Properties();
    try (var in = Files.newBufferedReader(installed.resolve(RUNTIME + "/release"))) {
      release.load(in);
    }
    List<String> modules = List.of(release.getProperty("MODULES").replace("\"", "").split(" "));

    assertThat(modules).containsAll(modulesByJdeps());
    assertThat(modules).doesNotContain("jdk.compiler", "jdk.jlink", "jdk.jshell");
  }

  @Test
  void manual_completion_documents_and_licence_are_there() throws Exception {
    assertThat(names(installed))
        .contains(
            "LICENSE",
            "README.md",
            "docs",
            "man",
            "completion",
            "fixtures",
            "sbom.json",
            "NOTICES.txt");
    assertThat(names(installed.resolve("man/man1"))).contains("withers.1", "withers-log-copy.1");
    assertThat(names(installed.resolve("docs"))).contains("first-hour.md", "security.md");
    assertThat(names(installed.resolve(RUNTIME + "/legal"))).contains("java.base");
  }

  private static Path launcher() {
    return installed.resolve("bin/withers");
  }

  private static String version() throws Exception {
    return Run.of(zip.command(launcher().toString(), "--version")).out();
  }

  /** As on another system: everything but the runtime, by links. */
  private static Path withoutRuntime(String name) throws IOException {
    Path elsewhere = Files.createDirectories(zip.home().resolve(name));
    Files.createSymbolicLink(elsewhere.resolve("app"), installed.resolve("app"));
    Files.createDirectories(elsewhere.resolve("bin"));
    Files.copy(launcher(), elsewhere.resolve("bin/withers"), StandardCopyOption.COPY_ATTRIBUTES);
    return elsewhere;
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  private static List<String> modulesByJdeps() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
    int code =
        ToolProvider.findFirst("jdeps")
            .orElseThrow()
            .run(
                stream,
                stream,
                "--ignore-missing-deps",
                "--recursive",
                "--multi-release",
                "17",
                "--print-module-deps",
                "--class-path",
                installed.resolve("app/lib") + "/*",
                installed.resolve("app/withers.jar").toString());
    assertThat(code).as(out.toString(StandardCharsets.UTF_8)).isZero();
    return Arrays.asList(out.toString(StandardCharsets.UTF_8).strip().split(","));
  }
}
