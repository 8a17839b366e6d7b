package withers.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine.Command;
import withers.workspace.Workspace;

/** What {@code init} asks, and what comes of the answers. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class InitConversationTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2031-03-01T12:00:00Z"), ZoneId.of("Europe/Helsinki"));

  @Command(name = "withers", subcommands = InitCommand.class)
  static final class Root {}

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @TempDir private Path temp;

  @Test
  void answers_become_settings_organisations_and_a_schedule() {
    Path folder = temp.resolve("coast");

    int code =
        typing(
            folder,
            "Coast Network",
            "Europe/Lisbon",
            "PT",
            "",
            "overview@coast.example.org",
            "clinic Harbour Clinic <lists@harbour.example.org>",
            "registry Coast Register",
            "",
            "monthly");

    assertThat(code).isZero();
    Workspace made = Workspace.open(folder, CLOCK);
    assertThat(made.settings().network()).isEqualTo("Coast Network");
    assertThat(made.settings().zone()).isEqualTo(ZoneId.of("Europe/Lisbon"));
    assertThat(made.settings().phoneRegion()).isEqualTo("PT");
    assertThat(made.settings().schedule())
        .extracting(job -> job.name())
        .containsExactly("nightly", "monthly");
    assertThat(made.coordinator().mail()).contains("overview@coast.example.org");
    assertThat(made.directory().all())
        .extracting(organisation -> organisation.id() + " " + organisation.mail().orElse("none"))
        .containsExactly(
            "coast-register none",
            "coordinator overview@coast.example.org",
            "harbour-clinic lists@harbour.example.org");
  }

  @Test
  void it_tells_which_exports_it_wants_to_see_next() {
    typing(temp.resolve("coast"), "", "", "", "", "", "shelter Dune Shelter", "", "");

    assertThat(err.toString(StandardCharsets.UTF_8))
        .endsWith(
            """
            Next: have an export of each looked at, and answer what is asked in its draft:
              withers inspect EXPORT --organisation dune-shelter --draft %s
            """
                .formatted(temp.resolve("coast/sources")));
  }

  @Test
  void enter_and_the_end_of_input_take_what_is_proposed() {
    Path folder = temp.resolve("coast");

    assertThat(typing(folder)).isZero();

    assertThat(err.toString(StandardCharsets.UTF_8))
        .contains(
            "The network's name, as lists and mails show it [coast]:",
            "Its time zone, such as Europe/Lisbon [Europe/Helsinki]:");
    Workspace made = Workspace.open(folder, CLOCK);
    assertThat(made.settings().network()).isEqualTo("coast");
    assertThat(made.settings().schedule()).isEmpty();
  }

  @Test
  void what_cannot_be_used_is_asked_again_with_the_reason() {
    Path folder = temp.resolve("coast");

    int code =
        typing(
            folder,
            "",
            "Lisbon",
            "Europe/Lisbon",
            "pt",
            "PT",
            "",
            "overview at coast",
            "",
            "vet Harbour",
            "clinic Harbour <harbour>",
            "clinic Harbour",
            "",
            "weekly",
            "nightly");

    assertThat(code).isZero();
    assertThat(err.toString(StandardCharsets.UTF_8))
        .contains(
            "  Expected a time zone such as Europe/Lisbon or America/New_York, but found \"Lisbon\"",
            "  Expected a country of two capital letters such as PT or US, or ZZ for none, but found \"pt\"",
            "  Expected an e-mail address such as lists@example.org, but found something else",
            "  Expected one of clinic, shelter, seller, registry, coordinator, other, but found \"vet\"",
            "  Expected one of none, nightly, monthly, but found \"weekly\"");
    assertThat(Workspace.open(folder, CLOCK).directory().all()).hasSize(2);
  }

  @Test
  void nothing_is_asked_when_an_option_says_something_or_nobody_is_there() {
    assertThat(run(typed("Asked"), "init", temp.resolve("a").toString(), "--yes")).isZero();
    assertThat(run(typed("Asked"), "init", temp.resolve("b").toString(), "--zone", "UTC")).isZero();
    assertThat(run(Operator.NOBODY, "init", temp.resolve("c").toString())).isZero();

    assertThat(List.of("a", "b", "c"))
        .allSatisfy(
            name ->
                assertThat(Workspace.open(temp.resolve(name), CLOCK).settings().network())
                    .isEqualTo(name));
    assertThat(err.toString(StandardCharsets.UTF_8)).doesNotContain("[");
  }

  @Test
  void a_workspace_that_is_there_asks_nothing() {
    typing(temp, "Coast");

    assertThat(typing(temp, "Another")).isZero();

    assertThat(Workspace.open(temp, CLOCK).settings().network()).isEqualTo("Coast");
  }

  @Test
  void options_say_the_same_as_answers() {
    typing(
        temp.resolve("a"),
        "Coast",
        "UTC",
        "PT",
        "",
        "me@example.org",
        "clinic Élan's Vets <desk@example.org>",
        "",
        "nightly");

    run(
        Operator.NOBODY,
        "init",
        temp.resolve("b").toString(),
        "--network=Coast",
        "--zone=UTC",
        "--phone-region=PT",
        "--mail=me@example.org",
        "--clinic=Élan's Vets <desk@example.org>",
        "--schedule=nightly");

    for (String file : List.of("withers.yaml", "organisations.yaml")) {
      assertThat(temp.resolve("b").resolve(file))
          .hasSameTextualContentAs(temp.resolve("a").resolve(file));
    }
    assertThat(temp.resolve("b/organisations.yaml")).content().contains("id: elans-vets");
  }

  @Test
  void two_organisations_of_one_name_are_refused() {
    int code =
        run(
            Operator.NOBODY,
            "init",
            temp.resolve("a").toString(),
            "--clinic=Harbour",
            "--shelter=HARBOUR");

    assertThat(code).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8))
        .startsWith(
            "withers: Expected a name of its own for each organisation, but found another \"HARBOUR\"");
    assertThat(Files.exists(temp.resolve("a"))).isFalse();
  }

  @Test
  void names_that_look_like_YAML_or_like_a_template_s_word_stay_what_they_are() {
    Path folder = temp.resolve("a");

    run(
        Operator.NOBODY,
        "init",
        folder.toString(),
        "--network={zone}: 'x' # y",
        "--clinic=- {members}: \"z\"");

    Workspace made = Workspace.open(folder, CLOCK);
    assertThat(made.settings().network()).isEqualTo("{zone}: 'x' # y");
    assertThat(made.directory().all())
        .extracting(organisation -> organisation.name())
        .contains("- {members}: \"z\"");
  }

  private int typing(Path folder, String... lines) {
    return run(typed(lines), "init", folder.toString());
  }

  /** A person who types these lines, and then nothing more. */
  private static Operator typed(String... lines) {
    Queue<String> left = new ArrayDeque<>(List.of(lines));
    return () -> Optional.of(Optional.ofNullable(left.poll()).orElse(""));
  }

  private int run(Operator operator, String... args) {
    Console console = new Console(stream(out), stream(err), false);
    CommandFactory factory =
        CommandFactory.handing(console, CLOCK, new Environment(Map.of()))
            .and(Operator.class, operator);
    return WithersCommandLine.of(Root.class, factory, console, ErrorHandler.standard())
        .execute(args);
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }
}
