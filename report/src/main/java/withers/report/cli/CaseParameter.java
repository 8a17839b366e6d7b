package withers.report.cli;

import java.util.List;
import picocli.CommandLine.Parameters;

/** The follow-up that a command is about, as people name it. Use as a mixin. */
final class CaseParameter {
  @Parameters(
      arity = "1..*",
      paramLabel = "CASE",
      description = "The reference that a list shows, or a number, with a kind or without.")
  private List<String> words = List.of();

  List<String> words() {
    return words;
  }
}
