package withers.report.cli;

import java.time.Clock;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import withers.report.demo.KafkaOfDemo;

/** On which log the demo is played. */
final class DemoLog {
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("uuuuMMdd-HHmmss", Locale.ROOT).withZone(ZoneOffset.UTC);

  /** The two logs. */
  enum Kind {
    EMBEDDED,
    KAFKA
  }

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  @Option(
      names = "--log",
      paramLabel = "embedded|kafka",
      converter = KindConverter.class,
      description = {
        "Where the events go: a file in the workspace, or Apache Kafka, for which --bootstrap names a broker.",
        "Default: embedded."
      })
  private Kind kind = Kind.EMBEDDED;

  @Option(
      names = "--bootstrap",
      paramLabel = "HOST:PORT",
      description = "With --log kafka: a broker that asks for no password.")
  private @Nullable String bootstrap;

  @Option(
      names = "--topic-prefix",
      paramLabel = "NAME",
      description = {
        "With --log kafka: what the names of its topics begin with; none may be there yet.",
        "Default: withers-demo- and the time."
      })
  private @Nullable String prefix;

  /** Reads a kind as people write it. */
  static final class KindConverter implements picocli.CommandLine.ITypeConverter<Kind> {
    @Override
    public Kind convert(String text) {
      return switch (text) {
        case "embedded" -> Kind.EMBEDDED;
        case "kafka" -> Kind.KAFKA;
        default ->
            throw new picocli.CommandLine.TypeConversionException(
                "expected embedded or kafka, but found \"%s\"".formatted(text));
      };
    }
  }

  /** Where the log is on Kafka; empty for the embedded one. */
  Optional<KafkaOfDemo> onKafka(Clock clock) {
    Optional<String> broker = Optional.ofNullable(bootstrap);
    if (kind == Kind.EMBEDDED) {
      if (broker.isPresent() || prefix != null) {
        throw refused("Expected --bootstrap and --topic-prefix with --log kafka only");
      }
      return Optional.empty();
    }
    return Optional.of(
        new KafkaOfDemo(
            broker.orElseThrow(
                () ->
                    refused(
                        "Expected --bootstrap HOST:PORT with --log kafka, but found none: Withers brings no broker along; docs/kafka.md says how to get one")),
            Optional.ofNullable(prefix)
                .orElseGet(() -> "withers-demo-" + STAMP.format(clock.instant()))));
  }

  private ParameterException refused(String message) {
    return new ParameterException(command.commandLine(), message);
  }
}
