package withers.report.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.JsonOption;
import withers.cli.WorkspaceOption;
import withers.report.json.Json;
import withers.workspace.EffectiveSettings;
import withers.workspace.EffectiveSettings.Line;

/** Shows every setting as it counts. */
@Command(
    name = "show",
    mixinStandardHelpOptions = true,
    description = {
      "Shows every setting of withers.yaml as it counts, with its place in the file or \"default\".",
      "Of a password the name of its file is shown, and nothing that is in it."
    },
    footerHeading = "%nExample:%n",
    footer = "  withers config show --workspace coast")
public final class ConfigShowCommand implements Callable<Integer> {
  private final Console console;

  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private JsonOption json;

  ConfigShowCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    List<Line> lines = EffectiveSettings.of(workspaceOption.open());
    for (Line line : lines) {
      console.print(json.isJson() ? Json.line(values(line)) : text(line));
    }
    return ExitCode.DONE.number();
  }

  private static String text(Line line) {
    return "%-28s %-34s %s"
        .formatted(
            line.key(),
            line.value().isEmpty() ? "none" : line.value(),
            line.from().orElse("default"));
  }

  private static Map<String, String> values(Line line) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("key", line.key());
    values.put("value", line.value());
    values.put("from", line.from().orElse("default"));
    return values;
  }
}
