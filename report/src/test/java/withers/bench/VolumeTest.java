package withers.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import withers.cli.Console;

/** The program of large volumes on a small one: that every list is taken over. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Tag("benchmark")
class VolumeTest {

  @Test
  void every_recipient_s_mail_is_taken_over() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Volume volume = new Volume(new Console(stream(out), stream(out), false));

    int exit = new CommandLine(volume).execute("--recipients", "3", "--each", "2");

    List<String> lines = out.toString(StandardCharsets.UTF_8).lines().toList();
    assertThat(exit).as(lines.toString()).isZero();
    assertThat(lines).hasSize(6);
    assertThat(lines.get(0)).startsWith("3 recipients with 2 each, heap 512m");
    assertThat(lines.get(5)).startsWith("taken over: 3 mails;");
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }
}
