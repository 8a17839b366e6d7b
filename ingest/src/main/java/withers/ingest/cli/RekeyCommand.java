package withers.ingest.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.WorkspaceOption;
import withers.ingest.ExportSet;
import withers.ingest.change.Rekeying;
import withers.workspace.Workspace;

/** Shows which records come under new keys, and keeps them under those when confirmed. */
@Command(
    name = "rekey",
    mixinStandardHelpOptions = true,
    description = {
      "Shows which records of full exports are known under other keys, as after a change of",
      "software. With --confirm, the log keeps them under their new keys, so that nothing is",
      "doubled and follow-ups go on; then import the exports as usual."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers rekey inbox/harbour-clinic-2031-02-28.csv",
      "  withers rekey --confirm inbox/harbour-clinic-2031-02-28.csv"
    })
public final class RekeyCommand implements Callable<Integer> {

  private static final int SHOWN = 3;

  private static final String CONFIRMED =
      "Kept under their new keys from this export on. Now import it: withers ingest.";

  private static final String UNDECIDED =
      "Nothing was changed. If they are the same records, repeat this with --confirm; if they are others, import them with withers ingest --new-records.";

  private final Console console;

  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private SourceOptions of;

  @Parameters(paramLabel = "FILE", arity = "1..*", description = "Full exports under new keys.")
  private List<Path> files = List.of();

  @Option(names = "--confirm", description = "They are the same records: keep them so.")
  private boolean confirmed;

  private boolean undecided;

  RekeyCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Workspace workspace = workspaceOption.open();
    Ingester ingester = new Ingester(workspace, console);
    Ingester.Request request =
        new Ingester.Request(files, of.source(), of.exportDate(), Optional.empty(), Set.of());
    return workspace.whileLocked(
        "rekey",
        () -> {
          ingester.rekey(request, confirmed, this::tell);
          return (undecided ? ExitCode.ATTENTION : ExitCode.DONE).number();
        });
  }

  private void tell(ExportSet set, Rekeying rekeying) {
    String export = "%s %s: ".formatted(set.profile().id(), set.exportDate());
    if (rekeying.pairs().isEmpty()) {
      console.print(export + "no missing record is there under a new key.");
      return;
    }
    console.print(export + found(rekeying));
    rekeying.pairs().entrySet().stream()
        .limit(SHOWN)
        .map(pair -> "  %s is now %s".formatted(pair.getKey(), pair.getValue()))
        .forEach(console::print);
    if (rekeying.pairs().size() > SHOWN) {
      console.print(count("  and %,d more", rekeying.pairs().size() - SHOWN));
    }
    undecided |= !confirmed;
    console.say(confirmed ? CONFIRMED : UNDECIDED);
  }

  private static String found(Rekeying rekeying) {
    return count("%,d of ", rekeying.pairs().size())
        + count("%,d missing records are there under new keys: ", rekeying.missing())
        + count("%,d say the same word for word, ", rekeying.same())
        + count(
            "%,d are the only ones with the same numbers.",
            rekeying.pairs().size() - rekeying.same());
  }

  private static String count(String format, long count) {
    return String.format(Locale.ROOT, format, count);
  }
}
