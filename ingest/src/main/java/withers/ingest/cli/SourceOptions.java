package withers.ingest.cli;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import withers.id.SourceId;

/** The options that say whose exports files are, and of when. Use as a mixin. */
final class SourceOptions {

  @Spec(Spec.Target.MIXEE)
  private @Nullable CommandSpec command;

  @Option(
      names = "--source",
      paramLabel = "ID",
      description = "The source of the files. Default: the one whose profile recognises the name.")
  private @Nullable String source;

  @Option(
      names = "--export-date",
      paramLabel = "DATE",
      description = "When the source said so, YYYY-MM-DD. Default: as the profile says.")
  private @Nullable LocalDate exportDate;

  /**
   * The source, where it is named.
   *
   * @throws ParameterException when it is no id
   */
  Optional<SourceId> source() {
    return Optional.ofNullable(source).map(this::id);
  }

  private SourceId id(String text) {
    try {
      return new SourceId(text);
    } catch (IllegalArgumentException refused) {
      throw new ParameterException(
          Objects.requireNonNull(command).commandLine(), String.valueOf(refused.getMessage()));
    }
  }

  /** The export date, where it is given. */
  Optional<LocalDate> exportDate() {
    return Optional.ofNullable(exportDate);
  }
}
