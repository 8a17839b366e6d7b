package withers.cli;

import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import withers.point.Points;
import withers.workspace.BeforeUpgrade;
import withers.workspace.Workspace;

/** The option {@code --workspace}. Use as a mixin. */
public final class WorkspaceOption {

  /** Names the workspace when the option doesn't. */
  public static final String VARIABLE = "WITHERS_WORKSPACE";

  private final Clock clock;
  private final Environment environment;
  private final Points points;
  private final BeforeUpgrade beforeUpgrade;

  @Option(
      names = {"-w", "--workspace"},
      paramLabel = "DIR",
      description = "The workspace. Default: $" + VARIABLE + ", else the current folder.")
  private @Nullable Path folder;

  WorkspaceOption(
      Clock clock, Environment environment, Points points, BeforeUpgrade beforeUpgrade) {
    this.clock = clock;
    this.environment = environment;
    this.points = points;
    this.beforeUpgrade = beforeUpgrade;
  }

  /** The folder named by the option or the variable, else the current one. */
  public Path folder() {
    return Optional.ofNullable(folder)
        .or(() -> environment.get(VARIABLE).map(Path::of))
        .orElse(Path.of(""));
  }

  /**
   * Opens the workspace.
   *
   * @throws withers.yaml.ConfigException as {@link Workspace#open}
   */
  public Workspace open() {
    return Workspace.open(folder(), clock, points, environment.variables(), beforeUpgrade);
  }
}
