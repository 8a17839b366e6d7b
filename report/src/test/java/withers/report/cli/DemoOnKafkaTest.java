package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.TestInstance.Lifecycle.PER_CLASS;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import withers.kafka.Broker;
import withers.kafka.TestJars;

/** Plays the demo on both logs: nobody who reads its lists can tell which it was. */
@TestInstance(PER_CLASS)
@Tag("kafka")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Timeout(value = 5, unit = TimeUnit.MINUTES)
class DemoOnKafkaTest {
  private static final Path HOME = Path.of("..").toAbsolutePath().normalize();

  private static final Pattern REFERENCE = Pattern.compile("01:[0-9a-f]{32}");

  @RegisterExtension static final Broker BROKER = new Broker();

  private Path place;
  private String prefix;
  private CommandRun onKafka;
  private CommandRun embedded;

  @BeforeAll
  void plays_the_demo_twice(@TempDir Path folder) {
    place = folder;
    prefix = BROKER.newPrefix();
    onKafka = onKafka(folder("kafka"));
    embedded = CommandRun.at(HOME, "demo", "--workspace", folder("embedded"));
  }

  private CommandRun onKafka(String folder) {
    return CommandRun.at(
        HOME,
        "demo",
        "--workspace",
        folder,
        "--log",
        "kafka",
        "--bootstrap",
        BROKER.address(),
        "--topic-prefix",
        prefix);
  }

  private String folder(String name) {
    return place.resolve(name).toString();
  }

  @Test
  void it_says_the_same() {
    assertThat(onKafka.err()).isEmpty();
    assertThat(onKafka.code()).isZero();
    assertThat(onKafka.out().replace(folder("kafka"), folder("embedded")))
        .isEqualTo(embedded.out());
  }

  @Test
  void its_events_are_on_the_broker_and_nowhere_else() {
    assertThat(place.resolve("embedded/log/events.db")).exists();
    assertThat(place.resolve("kafka/log/events.db")).doesNotExist();
    assertThat(place.resolve("kafka/log/contacts.db")).exists();
  }

  @Test
  void lists_and_overviews_are_the_same_byte_by_byte() throws IOException {
    Map<String, String> lists = files("embedded", "lists");
    assertThat(lists).hasSizeGreaterThan(50);
    assertThat(files("kafka", "lists")).isEqualTo(lists);
  }

  @Test
  void findings_are_the_same_byte_by_byte_but_for_the_references() throws IOException {
    Map<String, String> runs = runs("embedded");
    assertThat(runs).isNotEmpty();
    assertThat(runs("kafka")).isEqualTo(runs);
  }

  /** All files of all runs; the settings are others, since they name the log. */
  private Map<String, String> runs(String folder) throws IOException {
    Map<String, String> runs = files(folder, "runs");
    runs.replaceAll(
        (name, text) ->
            name.endsWith("basis.json")
                ? text.replaceFirst("\"settings\":\"\\p{XDigit}{64}\"", "\"settings\":\"\"")
                : text);
    return runs;
  }

  @Test
  void a_trace_says_the_same() {
    assertThat(trace("kafka")).isEqualTo(trace("embedded")).contains("In doubt:");
  }

  private String trace(String folder) {
    return CommandRun.of(
            "trace", "--workspace", folder(folder), "--as-of", "2026-10-01", "999010900000332")
        .out();
  }

  @Test
  void topics_with_imports_are_not_taken_for_a_demo() {
    CommandRun again = onKafka(folder("again"));
    assertThat(again.code()).isEqualTo(4);
    assertThat(again.err())
        .isEqualTo(
            "withers: Expected topics that are new, but found imports on those of the prefix %s: leave out --topic-prefix, or name another\n"
                .formatted(prefix));
  }

  @Test
  void without_a_broker_it_starts_one_and_ends_it() throws IOException {
    CommandRun own = CommandRun.at(homeWithBroker(), ownBroker("own"));
    assertThat(own.err()).isEqualTo("Starting a Kafka broker for the demo ...\n");
    assertThat(own.code()).isZero();
    assertThat(own.out())
        .startsWith(embedded.out().substring(0, embedded.out().indexOf("Where to look:")))
        .endsWith(
            "On one that stays they do: bin/withers demo --log kafka --bootstrap HOST:PORT\n");
    assertThat(files("own", "lists")).isEqualTo(files("embedded", "lists"));
    assertThat(ProcessHandle.current().children().map(ProcessHandle::info))
        .noneMatch(child -> child.toString().contains(folder("own")));
  }

  @Test
  void without_a_broker_and_its_jars_it_says_what_to_do_and_touches_nothing() throws IOException {
    CommandRun run = CommandRun.at(homeWithoutBroker("bare"), ownBroker("none"));
    assertThat(run.code()).isEqualTo(4);
    assertThat(run.err())
        .isEqualTo(
            "withers: Expected the jars of a Kafka broker, but this Withers has none: start the demo with the launcher of a whole copy of the project, or name a broker with --bootstrap HOST:PORT (docs/kafka.md)\n");
    assertThat(place.resolve("none")).doesNotExist();
  }

  private String[] ownBroker(String name) {
    return new String[] {"demo", "--workspace", folder(name), "--log", "kafka"};
  }

  /** The project's folder as the launcher leaves it: with a list of the broker's jars. */
  private Path homeWithBroker() throws IOException {
    Path home = homeWithoutBroker("home");
    Path list = home.resolve("shared/broker/target/launcher/jars");
    Files.createDirectories(list.getParent());
    Files.writeString(list, TestJars.all());
    return home;
  }

  @AfterAll
  void removes_the_links() throws IOException {
    for (String home : List.of("home", "bare")) {
      Files.deleteIfExists(place.resolve(home).resolve("fixtures"));
    }
  }

  /** One that nobody has started anything from. */
  private Path homeWithoutBroker(String name) throws IOException {
    Path home = Files.createDirectories(place.resolve(name));
    Files.createSymbolicLink(home.resolve("fixtures"), HOME.resolve("fixtures"));
    return home;
  }

  private Map<String, String> files(String folder, String part) throws IOException {
    Path root = place.resolve(folder).resolve(part);
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(root)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        files.put(root.relativize(file).toString(), content(file));
      }
    }
    return files;
  }

  private static String content(Path file) throws IOException {
    return file.toString().endsWith(".xlsx")
        ? workbook(file)
        : withNumberedPeople(Files.readString(file, StandardCharsets.ISO_8859_1));
  }

  /** All parts of a workbook but the one that holds the time at which it was made. */
  private static String workbook(Path file) throws IOException {
    StringBuilder parts = new StringBuilder();
    try (ZipFile zip = new ZipFile(file.toFile())) {
      for (ZipEntry part : Collections.list(zip.entries())) {
        if (!part.getName().equals("docProps/core.xml")) {
          byte[] content = zip.getInputStream(part).readAllBytes();
          parts.append(part.getName()).append(new String(content, StandardCharsets.ISO_8859_1));
        }
      }
    }
    return parts.toString();
  }

  /** Each workspace has a key of its own, and with it other references for the same people. */
  private static String withNumberedPeople(String text) {
    Map<String, String> numbers = new HashMap<>();
    return REFERENCE
        .matcher(text)
        .replaceAll(
            found -> numbers.computeIfAbsent(found.group(), one -> "person " + numbers.size()));
  }
}
