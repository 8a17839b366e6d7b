package withers.report.manual.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import withers.cli.Console;
import withers.cli.ExitCode;

/** Writes the manual. */
@Command(
    name = "manual",
    mixinStandardHelpOptions = true,
    description = {
      "Writes a manual page for each command, and what Bash needs to complete them, into a folder.",
      "What the folder holds under the same names is replaced."
    },
    footerHeading = "%nExample:%n",
    footer = {
      "  withers manual ~/.local/share/withers",
      "  man -M ~/.local/share/withers/man withers-ingest",
      "  source ~/.local/share/withers/completion/withers.bash"
    })
public final class ManualCommand implements Callable<Integer> {
  private final Console console;

  @Spec private @Nullable CommandSpec spec;

  @Parameters(paramLabel = "DIR", description = "The folder; it is made when it is missing.")
  private Path folder = Path.of("");

  ManualCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    CommandLine root = Objects.requireNonNull(spec).root().commandLine();
    Map<String, String> files = new LinkedHashMap<>();
    addPages(root, files);
    String name = root.getCommandName();
    files.put("completion/" + name + ".bash", AutoComplete.bash(name, root));
    files.forEach(this::write);
    console.print("%d files in %s".formatted(files.size(), folder.toAbsolutePath().normalize()));
    return ExitCode.DONE.number();
  }

  private static void addPages(CommandLine line, Map<String, String> files) {
    ManualPage page = new ManualPage(line);
    files.put("man/man1/" + page.name() + ".1", page.text());
    line.getSubcommands().values().forEach(inner -> addPages(inner, files));
  }

  private void write(String place, String text) {
    Path file = folder.resolve(place);
    try {
      Files.createDirectories(Objects.requireNonNull(file.getParent()));
      Files.writeString(file, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
