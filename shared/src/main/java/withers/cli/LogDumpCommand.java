package withers.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import withers.codec.Streams;
import withers.log.EventLog;
import withers.log.LogStream;
import withers.log.copy.LogDump;
import withers.source.InputRefusedException;
import withers.workspace.OwnerOnly;
import withers.workspace.Workspace;

/** Writes the log as lines of JSON. */
@Command(
    name = "dump",
    mixinStandardHelpOptions = true,
    description = {
      "Writes the event log as lines of JSON, in the shapes of docs/events.schema.json: imports in the"
          + " order of their commits, then the events, by stream, partition and import.",
      "There are no contacts in it, but what is told of animals and references to people: keep it as you"
          + " keep the workspace."
    },
    footerHeading = "%nExample:%n",
    footer = "  withers log dump --stream chips --output chips.jsonl")
public final class LogDumpCommand implements Callable<Integer> {
  private static final List<String> NAMES =
      Stream.concat(Stream.of(Streams.IMPORTS), Streams.all().stream().map(LogStream::name))
          .toList();

  private final Console console;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;

  @Option(
      names = "--stream",
      paramLabel = "NAME",
      description =
          "imports, chips, supply, unplaced, cases, deliveries or audit; give one for each. Default: all.")
  private Set<String> streams = new LinkedHashSet<>();

  @Option(
      names = "--output",
      paramLabel = "FILE",
      description = "A file, which only its owner can read. Default: standard output.")
  private @Nullable Path output;

  LogDumpCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    streams.stream().filter(name -> !NAMES.contains(name)).findFirst().ifPresent(this::refuse);
    Workspace workspace = workspaceOption.open();
    try (EventLog log = workspace.openFilledLog().orElseThrow(LogDumpCommand::empty)) {
      LogDump dump = new LogDump(log.snapshot(), streams.isEmpty() ? Set.copyOf(NAMES) : streams);
      Optional.ofNullable(output)
          .ifPresentOrElse(file -> write(dump, file), () -> dump.run(console::print));
    }
    return ExitCode.DONE.number();
  }

  private void refuse(String name) {
    throw new ParameterException(
        Objects.requireNonNull(spec).commandLine(),
        "Expected one of %s, but found \"%s\"".formatted(String.join(", ", NAMES), name));
  }

  private static InputRefusedException empty() {
    return new InputRefusedException(
        "Expected imports on the log, but found none: import exports first, with \"withers ingest\"");
  }

  private static void write(LogDump dump, Path file) {
    try {
      OwnerOnly.replace(file, out -> dump.run(line -> write(line, out)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void write(String line, OutputStream out) {
    try {
      out.write((line + "\n").getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
