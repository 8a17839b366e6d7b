package withers.report.cli;

import picocli.CommandLine.Option;

/**
 * Who does something, and why, where only some uses of a command ask for it. Use as a mixin;
 * whether it was said as it should be is for {@link withers.cli.Typed} to say.
 */
final class WhoAndWhyIfDone {
  @Option(names = "--by", paramLabel = "ROLE", description = "In which role. Never a name.")
  private String role = "";

  @Option(
      names = "--reason",
      paramLabel = "TEXT",
      description = "Why, in a sentence. No phones, no addresses, no names of people.")
  private String reason = "";

  String role() {
    return role;
  }

  String reason() {
    return reason;
  }
}
