package withers.cli;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.TypeConversionException;
import withers.workspace.FirstSchedule;
import withers.workspace.TestNumbers;
import withers.yaml.Choices;
import withers.yaml.Values;

/**
 * Sets a command line up the way that all commands share: console, converters, errors and exit
 * codes.
 */
public final class WithersCommandLine {
  private static final int WIDTH = 100;

  private WithersCommandLine() {}

  /**
   * A command line for a root command and its subcommands.
   *
   * @param root the root command's class, made by the factory as its subcommands are
   */
  public static CommandLine of(
      Class<?> root, CommandFactory factory, Console console, ErrorHandler errors) {
    return of(root, List.of(), factory, console, errors);
  }

  /**
   * A command line for a root command and its subcommands.
   *
   * @param more subcommands besides those that the root names itself
   */
  public static CommandLine of(
      Class<?> root,
      List<Class<?>> more,
      CommandFactory factory,
      Console console,
      ErrorHandler errors) {
    CommandLine line = new CommandLine(root, factory);
    more.forEach(line::addSubcommand);
    line.getCommandSpec().addOption(traceErrors());
    shareVersion(line, line.getCommandSpec().versionProvider());
    line.registerConverter(LocalDate.class, reading(Values::date));
    line.registerConverter(ZoneId.class, reading(Values::zone));
    line.registerConverter(
        TestNumbers.class, reading(text -> Choices.read(TestNumbers.class, text)));
    line.registerConverter(
        FirstSchedule.class, reading(text -> Choices.read(FirstSchedule.class, text)));
    line.setUsageHelpWidth(WIDTH);
    line.setOut(writer(console.out()));
    line.setErr(writer(console.err()));
    line.setParameterExceptionHandler(errors);
    line.setExecutionExceptionHandler(errors);
    return line;
  }

  private static void shareVersion(CommandLine line, @Nullable IVersionProvider version) {
    line.getCommandSpec().versionProvider(version);
    line.getSubcommands().values().forEach(command -> shareVersion(command, version));
  }

  private static OptionSpec traceErrors() {
    return OptionSpec.builder(ErrorHandler.TRACE_ERRORS)
        .scopeType(ScopeType.INHERIT)
        .type(boolean.class)
        .arity("0")
        .description("Show where in the program an error arose.")
        .build();
  }

  private static <T> ITypeConverter<T> reading(ITypeConverter<T> reader) {
    return text -> {
      try {
        return reader.convert(text);
      } catch (IllegalArgumentException refused) {
        throw new TypeConversionException(String.valueOf(refused.getMessage()));
      }
    };
  }

  private static PrintWriter writer(PrintStream stream) {
    return new PrintWriter(stream, true, StandardCharsets.UTF_8);
  }
}
