package withers.ingest.cli;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The commands about look-ups: what registries answer when somebody asks them. */
@Command(
    name = "look-up",
    mixinStandardHelpOptions = true,
    subcommands = LookUpRecordCommand.class,
    description = "Keeps what registries answered when somebody asked them about a number.",
    footerHeading = "%nExample:%n",
    footer = "  withers look-up record 999010900000101 --registry vendle --answer not-registered")
public final class LookUpCommand implements Runnable {

  @Spec private @Nullable CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(
        Objects.requireNonNull(spec).commandLine(),
        "Expected what to do with a look-up (record), but found nothing");
  }
}
