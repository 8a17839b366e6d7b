package withers.cli;

import static org.assertj.core.api.Assertions.assertThat;

import picocli.CommandLine;

/** What every command's help must show; shared with the module that puts the commands together. */
public final class UsageCheck {
  private UsageCheck() {}

  /**
   * Asserts that each subcommand, at any depth, describes itself and shows an example that starts
   * with its name.
   */
  public static void everyCommandShowsAnExample(CommandLine line) {
    for (CommandLine command : line.getSubcommands().values()) {
      String usage = command.getUsageMessage();
      assertThat(usage)
          .contains("Example")
          .contains("  " + command.getCommandSpec().qualifiedName());
      assertThat(command.getCommandSpec().usageMessage().description()).isNotEmpty();
      everyCommandShowsAnExample(command);
    }
  }
}
