package withers.report.cli;

import picocli.CommandLine.Option;

/** Who says something about a follow-up, and why. Use as a mixin. */
final class WhoAndWhy {
  @Option(
      names = "--by",
      paramLabel = "ROLE",
      required = true,
      description = "In which role, such as \"front desk\". Never a person's name.")
  private String role = "";

  @Option(
      names = "--reason",
      paramLabel = "TEXT",
      required = true,
      description = "Why, in a sentence. No phones, no addresses, no names of people.")
  private String reason = "";

  /** As it was typed: whether it may be taken is for {@link SettleText} to say. */
  String role() {
    return role;
  }

  /** As it was typed. */
  String reason() {
    return reason;
  }
}
