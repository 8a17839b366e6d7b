package withers.cli;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import withers.workspace.NewWorkspace;
import withers.workspace.Settings;
import withers.workspace.TestNumbers;
import withers.workspace.Workspace;

/** Makes a workspace. */
@Command(
    name = "init",
    mixinStandardHelpOptions = true,
    description = {
      "Makes a workspace in a new or empty folder: settings, directory of organisations, folders.",
      "In an existing workspace it adds what is missing. It never overwrites."
    },
    footerHeading = "%nExample:%n",
    footer =
        "  withers init coast --network \"Coast Network\" --zone Europe/Lisbon --phone-region PT")
public final class InitCommand implements Callable<Integer> {
  private final Console console;
  private final Clock clock;

  @Spec private @Nullable CommandSpec spec;

  @Parameters(paramLabel = "DIR", description = "The folder.")
  private Path folder = Path.of("");

  @Option(
      names = "--network",
      paramLabel = "NAME",
      description = "The network's name, for lists and mails. Default: the folder's name.")
  private @Nullable String network;

  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      description = "Whose calendar says what today is. Default: this computer's time zone.")
  private @Nullable ZoneId zone;

  @Option(
      names = "--phone-region",
      paramLabel = "XX",
      description = {
        "The country whose rules read phones without a country code.",
        "Default: this computer's country, or ZZ for none."
      })
  private @Nullable String phoneRegion;

  @Option(
      names = "--language",
      paramLabel = "TAG",
      defaultValue = "en",
      description = "Language of lists and mails. Default: ${DEFAULT-VALUE}.")
  private String language = "en";

  @Option(
      names = "--test-numbers",
      paramLabel = "refused|accepted",
      defaultValue = "refused",
      description =
          "Numbers under the standard's test code, 999: accepted is for trials only. Default: ${DEFAULT-VALUE}.")
  private TestNumbers testNumbers = TestNumbers.REFUSED;

  InitCommand(Console console, Clock clock) {
    this.console = console;
    this.clock = clock;
  }

  @Override
  public Integer call() {
    List<String> made = Workspace.create(folder, answers());
    Workspace.open(folder, clock);
    tell(made, folder.toAbsolutePath().normalize());
    return ExitCode.DONE.number();
  }

  private void tell(List<String> made, Path where) {
    if (made.isEmpty()) {
      console.print("Nothing was missing in " + where);
      return;
    }
    console.print("Made in " + where + ":");
    made.forEach(file -> console.print("  " + file));
    console.say(
        "Next: name the organisations in organisations.yaml and describe each source in sources/.");
  }

  private NewWorkspace answers() {
    try {
      return new NewWorkspace(
          Optional.ofNullable(network).orElseGet(this::folderName),
          Optional.ofNullable(zone).orElseGet(clock::getZone),
          Optional.ofNullable(phoneRegion).orElseGet(InitCommand::countryHere),
          language,
          testNumbers);
    } catch (IllegalArgumentException refused) {
      throw new ParameterException(
          Objects.requireNonNull(spec).commandLine(), String.valueOf(refused.getMessage()));
    }
  }

  private String folderName() {
    return String.valueOf(folder.toAbsolutePath().normalize().getFileName());
  }

  private static String countryHere() {
    String country = Locale.getDefault().getCountry();
    return country.length() == 2 ? country : Settings.UNKNOWN_REGION;
  }
}
