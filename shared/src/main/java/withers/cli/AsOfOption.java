package withers.cli;

import java.time.LocalDate;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import withers.workspace.Workspace;

/** The option {@code --as-of}. Use as a mixin. */
public final class AsOfOption {
  @Option(
      names = "--as-of",
      paramLabel = "DATE",
      description =
          "Judge as of this day, YYYY-MM-DD. Default: today in the workspace's time zone.")
  private @Nullable LocalDate date;

  /** The day given, else today in the workspace's zone. */
  public LocalDate in(Workspace workspace) {
    return Optional.ofNullable(date).orElseGet(workspace::today);
  }
}
