package withers.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;
import withers.contact.VaultDamagedException;
import withers.contact.VaultUnavailableException;
import withers.log.LogDamagedException;
import withers.log.LogUnavailableException;
import withers.log.StaleParentException;
import withers.source.InputRefusedException;
import withers.workspace.WorkspaceBusyException;
import withers.yaml.ConfigException;

/**
 * Tells what went wrong in one message on standard error and ends with its exit code. The messages
 * of exceptions that it knows are shown as they are; those of others could hold people's details
 * and are not.
 */
public final class ErrorHandler implements IExecutionExceptionHandler, IParameterExceptionHandler {
  static final String TRACE_ERRORS = "--trace-errors";

  private record Known(Class<? extends Throwable> type, ExitCode code) {}

  private final List<Known> known;

  private ErrorHandler(List<Known> known) {
    this.known = List.copyOf(known);
  }

  /** Knows the exceptions of the shared packages. */
  public static ErrorHandler standard() {
    return new ErrorHandler(
        List.of(
            new Known(ConfigException.class, ExitCode.CONFIGURATION),
            new Known(InputRefusedException.class, ExitCode.INPUT_REFUSED),
            new Known(WorkspaceBusyException.class, ExitCode.BUSY),
            new Known(StoppedException.class, ExitCode.BUSY),
            new Known(StaleParentException.class, ExitCode.BUSY),
            new Known(LogUnavailableException.class, ExitCode.STORAGE),
            new Known(VaultUnavailableException.class, ExitCode.STORAGE),
            new Known(VaultDamagedException.class, ExitCode.STORAGE),
            new Known(LogDamagedException.class, ExitCode.STORAGE)));
  }

  /** Knows this exception too: its message is fit to be shown, and it ends with this code. */
  public ErrorHandler and(Class<? extends Throwable> type, ExitCode code) {
    List<Known> more = new ArrayList<>(known);
    more.add(new Known(type, code));
    return new ErrorHandler(more);
  }

  @Override
  public int handleExecutionException(Exception thrown, CommandLine line, ParseResult parsed) {
    Failure failure = failure(thrown);
    line.getErr().println("withers: " + failure.message());
    if (parsed.originalArgs().contains(TRACE_ERRORS)) {
      ErrorTrace.of(thrown).forEach(line.getErr()::println);
    }
    return failure.code().number();
  }

  @Override
  public int handleParseException(ParameterException wrong, String[] args) {
    CommandLine line = wrong.getCommandLine();
    line.getErr().println("withers: " + wrong.getMessage());
    UnmatchedArgumentException.printSuggestions(wrong, line.getErr());
    line.getErr().println("\"" + line.getCommandSpec().qualifiedName() + " --help\" explains it.");
    return ExitCode.USAGE.number();
  }

  private record Failure(ExitCode code, String message) {}

  private Failure failure(Exception thrown) {
    return known(thrown)
        .or(() -> storage(thrown))
        .orElseGet(() -> new Failure(ExitCode.INTERNAL, internal(thrown)));
  }

  private Optional<Failure> known(Exception thrown) {
    return known.stream()
        .filter(entry -> entry.type.isInstance(thrown))
        .findFirst()
        .map(entry -> new Failure(entry.code, String.valueOf(thrown.getMessage())));
  }

  private static Optional<Failure> storage(Exception thrown) {
    Throwable cause = thrown instanceof UncheckedIOException ? thrown.getCause() : thrown;
    return cause instanceof IOException io
        ? Optional.of(new Failure(ExitCode.STORAGE, StorageWords.of(io)))
        : Optional.empty();
  }

  private static String internal(Exception thrown) {
    return "Expected this to work, but Withers itself failed (%s, %s). Run it again with %s to see the way there."
        .formatted(thrown.getClass().getSimpleName(), ErrorTrace.origin(thrown), TRACE_ERRORS);
  }
}
