package withers.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import withers.cli.Console;

/** The benchmark of the vault on a few contacts: that all are stored and found. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class VaultingTest {

  @Test
  void stores_and_finds_every_contact() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
    Vaulting vaulting = new Vaulting(new Console(stream, stream, false));

    int exit =
        new CommandLine(vaulting)
            .execute("--contacts", "250", "--batch", "100", "--together", "70");

    List<String> lines = out.toString(StandardCharsets.UTF_8).lines().toList();
    assertThat(exit).as(lines.toString()).isZero();
    assertThat(vaulting.stored()).isEqualTo(250);
    assertThat(vaulting.found()).isEqualTo(250);
    assertThat(lines).hasSize(4);
    assertThat(lines.get(0)).startsWith("250 contacts");
    assertThat(lines.get(3))
        .matches("finding +[0-9.]+ us of the processor +[0-9.]+ us on the wall");
  }
}
