package withers.cli;

import picocli.CommandLine.Option;

/** The option {@code --json}. Use as a mixin. */
public final class JsonOption {
  @Option(
      names = "--json",
      description = "Write the result as JSON to standard output, for scripts.")
  private boolean json;

  public boolean isJson() {
    return json;
  }
}
