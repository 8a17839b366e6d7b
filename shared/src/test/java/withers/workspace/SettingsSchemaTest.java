package withers.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import withers.yaml.ConfigException;

/**
 * The published schema of {@code withers.yaml}, held to what the reader asks for, and, as
 * networknt's validator 3.0.9 understands it, to files.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SettingsSchemaTest {
  private static final Path PUBLISHED = Path.of("..", "docs", "withers.schema.json");
  private static final Pattern QUOTED = Pattern.compile("\"([^\"]+)\"");
  private static final String REQUIRED =
      "network: Coast Network\nzone: Europe/Lisbon\ncoordinator: coast\n";
  private static final String FULL =
      REQUIRED
          + """
          regions: {Dunes: {grace-days: 14}}
          schedule: {nightly: {cron: 30 2 * * *, actions: ingest}}
          schedule-store: {host: jobs.example.org, user: withers, password-file: jobs.password}
          case-workers: [desk]
          retention: {quarantine-days: 90, lists-days: 400, runs-days: 400, scorecards-days: 400, inbox-days: 60, receipts-days: 60}
          watch: {port: 9464, operator: night@example.org}
          mail: {server: {host: smtp.example.org, user: lists, password-file: mail.password}}
          log: {kafka: {bootstrap-servers: ['kafka.example.org:9093'], user: coast, password-file: kafka.password}}
          """;

  @TempDir private Path folder;

  /** A key that nobody knows has the reader name all that it knows at that place. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          ''                                           | qqq: 1
          /properties/regions/additionalProperties     | regions: {Dunes: {qqq: 1}}
          /properties/schedule/additionalProperties    | schedule: {nightly: {qqq: 1}}
          /properties/schedule-store                   | schedule-store: {qqq: 1}
          /properties/log                              | log: {qqq: 1}
          /properties/log/properties/kafka             | log: {kafka: {qqq: 1}}
          /properties/retention                        | retention: {qqq: 1}
          /properties/watch                            | watch: {qqq: 1}
          /properties/mail                             | mail: {qqq: 1}
          /properties/mail/properties/server           | mail: {server: {qqq: 1}}
          """)
  void its_keys_are_those_that_the_reader_knows(String place, String line) throws IOException {
    write(REQUIRED + line + "\n");

    assertThat(new TreeSet<>(published().at(place).path("properties").propertyNames()))
        .isEqualTo(known());
  }

  private Set<String> known() {
    ConfigException mistakes =
        catchThrowableOfType(
            ConfigException.class, () -> Workspace.open(folder, Clock.systemUTC()));
    String message =
        mistakes.problems().stream()
            .filter(problem -> problem.key().equals("qqq"))
            .map(problem -> problem.message())
            .collect(Collectors.joining());
    Set<String> keys =
        QUOTED
            .matcher(message)
            .results()
            .map(found -> found.group(1))
            .collect(Collectors.toCollection(TreeSet::new));
    keys.remove("qqq");
    return keys;
  }

  /** No object of the schema is left out above. */
  @Test
  void it_has_no_other_objects() throws IOException {
    assertThat(PUBLISHED).content().containsPattern("additionalProperties");
    assertThat(Files.readString(PUBLISHED).split("\"additionalProperties\": false", -1))
        .hasSize(11);
  }

  @Test
  void its_defaults_are_those_that_count_where_nothing_is_stated() throws IOException {
    write(REQUIRED);
    Map<String, String> counting = new TreeMap<>();
    EffectiveSettings.of(Workspace.open(folder, Clock.systemUTC())).stream()
        .filter(line -> line.from().isEmpty() && !line.value().isEmpty())
        .forEach(line -> counting.put(line.key(), line.value()));
    Map<String, String> told = new TreeMap<>();
    defaults("", published(), told);
    told.remove("mail.server.security"); // without a server it counts for nothing
    told.keySet().removeIf(key -> key.startsWith("log.kafka."));
    told.keySet().removeIf(key -> key.startsWith("schedule-store."));

    assertThat(told).isEqualTo(counting);
  }

  private static void defaults(String above, JsonNode object, Map<String, String> told) {
    object
        .path("properties")
        .properties()
        .forEach(
            one -> {
              JsonNode value = one.getValue().path("default");
              if (!value.isMissingNode()) {
                told.put(above + one.getKey(), value.asString());
              }
              defaults(above + one.getKey() + ".", one.getValue(), told);
            });
  }

  @Test
  void every_setting_is_shown_with_its_place() throws IOException {
    write(FULL);
    List<EffectiveSettings.Line> lines =
        EffectiveSettings.of(Workspace.open(folder, Clock.systemUTC()));

    assertThat(lines)
        .contains(
            line("zone", "Europe/Lisbon", "withers.yaml, line 2, column 7"),
            line("regions.Dunes.grace-days", "14", "withers.yaml, line 4, column 31"),
            line("schedule.nightly.actions", "[ingest]", "withers.yaml, line 5, column 49"),
            line("mail.server.password-file", "mail.password", "withers.yaml, line 10, column 69"))
        .contains(
            new EffectiveSettings.Line("grace-days", "30", Optional.empty()),
            new EffectiveSettings.Line("schedule.nightly.zone", "Europe/Lisbon", Optional.empty()));
    List<String> shown = lines.stream().map(EffectiveSettings.Line::key).toList();
    List<String> published = new ArrayList<>();
    leaves("", published(), published);
    assertThat(shown).containsAll(published);
  }

  private static EffectiveSettings.Line line(String key, String value, String from) {
    return new EffectiveSettings.Line(key, value, Optional.of(from));
  }

  private static void leaves(String above, JsonNode object, List<String> leaves) {
    object
        .path("properties")
        .properties()
        .forEach(
            one -> {
              if (!one.getValue().path("type").asString("").equals("object")) {
                leaves.add(above + one.getKey());
              }
              leaves(above + one.getKey() + ".", one.getValue(), leaves);
            });
  }

  @Test
  void the_demo_s_settings_a_new_workspace_s_and_full_ones_are_as_it_says() throws IOException {
    Path made = folder.resolve("made");
    Workspace.create(
        made,
        new NewWorkspace("Coast Network", ZoneOffset.UTC, "PT", "en-GB", TestNumbers.REFUSED));

    assertThat(mistakes(Files.readString(Path.of("../fixtures/demo/workspace/withers.yaml"))))
        .isEmpty();
    assertThat(mistakes(Files.readString(made.resolve("withers.yaml")))).isEmpty();
    assertThat(mistakes(FULL)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "grace-dayz: 3",
        "grace-days: 367",
        "grace-days: many",
        "unchanged-records: forgotten",
        "schedule: {nightly: {cron: 30 2 * *, actions: ingest}}",
        "schedule: {nightly: {cron: 30 2 * * *}}",
        "schedule: {Nightly: {cron: 30 2 * * *, actions: ingest}}",
        "mail: {server: {port: 25}}",
        "watch: {port: 0}",
        "log: {kafka: {topic-prefix: coast}}",
        "log: {kafka: {bootstrap-servers: kafka.example.org}}"
      })
  void refuses_what_the_program_refuses(String line) throws IOException {
    write(REQUIRED + line + "\n");
    assertThat(
            catchThrowableOfType(
                ConfigException.class, () -> Workspace.open(folder, Clock.systemUTC())))
        .isNotNull();

    assertThat(mistakes(REQUIRED + line)).isNotEmpty();
  }

  private static List<?> mistakes(String yaml) throws IOException {
    Schema schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(Files.readString(PUBLISHED), InputFormat.JSON);
    return schema.validate(yaml, InputFormat.YAML);
  }

  private static JsonNode published() throws IOException {
    return JsonMapper.shared().readTree(Files.readAllBytes(PUBLISHED));
  }

  private void write(String settings) throws IOException {
    Files.write(folder.resolve("withers.yaml"), settings.getBytes(StandardCharsets.UTF_8));
    Files.writeString(
        folder.resolve("organisations.yaml"),
        "organisations:\n  - {id: coast, name: Coast Network, kind: coordinator, region: Dunes}\n");
  }
}
