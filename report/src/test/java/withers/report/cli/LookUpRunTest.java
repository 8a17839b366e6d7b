package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.report.Coast;

/** Two registries never export; what they answer decides. Invented. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class LookUpRunTest {

  private static final String NUMBER = "999000000001003";

  @TempDir private Path folder;

  @BeforeEach
  void a_clinic_knows_a_dog_and_its_keeper() throws IOException {
    Coast.writeWorkspace(folder);
    Coast.writePatients(folder);
    write(
        "inbox/patients-2026-02-27.csv",
        """
        No,Chip,Seen,Client,Phone
        P-19,999000000001003,2025-06-01,Mara Linden,+1 212 555 0151
        """);
    assertThat(CommandRun.of("ingest", "--workspace", folder.toString()).code()).isZero();
  }

  private void write(String name, String text) throws IOException {
    Coast.write(folder, name, text);
  }

  private String run() {
    CommandRun run = CommandRun.of("run", "--workspace", folder.toString());
    assertThat(run.code()).as(run.err()).isZero();
    return run.out();
  }

  private CommandRun answered(String registry, String answer, String... more) {
    String[] all = {
      "look-up",
      "record",
      NUMBER,
      "--workspace",
      folder.toString(),
      "--registry",
      registry,
      "--answer",
      answer
    };
    String[] args = java.util.Arrays.copyOf(all, all.length + more.length);
    System.arraycopy(more, 0, args, all.length, more.length);
    CommandRun recorded = CommandRun.of(args);
    assertThat(recorded.code()).as(recorded.err()).isZero();
    return recorded;
  }

  @Test
  void an_animal_is_unregistered_once_every_registry_has_said_so() {
    assertThat(run()).contains("Nothing is to be followed up.");
    answered("tideline", "not-registered", "--by", "front desk");
    assertThat(run()).contains("Nothing is to be followed up.");
    answered("beacon", "registered-elsewhere", "--on", "2025-07-01");

    assertThat(run()).contains("Chip is not registered", "1 new, 0 still open, 0 settled");
  }

  @Test
  void an_answer_from_before_the_grace_period_was_over_says_nothing() {
    answered("tideline", "not-registered", "--on", "2025-06-30");
    answered("beacon", "not-registered");

    assertThat(run()).contains("Nothing is to be followed up.");
  }

  @Test
  void a_follow_up_is_closed_when_the_answer_is_put_right() {
    answered("tideline", "not-registered");
    answered("beacon", "not-registered");
    run();
    assertThat(answered("beacon", "registered").out())
        .endsWith("It replaces the answer \"not registered\".\n");

    assertThat(run()).contains("Nothing is to be followed up.", "1 settled by new records.");
  }

  @Test
  void the_trace_and_the_list_show_what_was_answered() throws IOException {
    answered("tideline", "not-registered", "--by", "front desk");
    answered("beacon", "not-registered");
    run();

    assertThat(CommandRun.of("trace", "--workspace", folder.toString(), NUMBER).out())
        .contains(
            "2026-03-01  Tideline answered: not registered, asked by front desk  [Coast Network, record L000001, first stated 2026-03-01]");
    String id = Files.readString(folder.resolve("runs/latest")).strip();
    assertThat(folder.resolve("lists").resolve(id).resolve("harbour-vets/list.html"))
        .content()
        .contains("Tideline was asked about chip", "Source: Coast Network, record L000001");
  }
}
