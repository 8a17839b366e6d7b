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
        "Where the events go: a file in the workspace, or Apache Kafka.",
        "Default: embedded."
      })
  private Kind kind = Kind.EMBEDDED;

  @Option(
      names = "--bootstrap",
      paramLabel = "HOST:PORT",
      description = {
        "With --log kafka: a broker that asks for no password.",
        "Default: one that is started for the demo and ends with it."
      })
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

  /** Refuses options that don't go together. */
  void check() {
    if (kind == Kind.EMBEDDED && (bootstrap != null || prefix != null)) {
      throw new ParameterException(
          command.commandLine(), "Expected --bootstrap and --topic-prefix with --log kafka only");
    }
  }

  /** Whether the demo is played on Kafka, and no broker is named. */
  boolean wantsBroker() {
    return kind == Kind.KAFKA && bootstrap == null;
  }

  /**
   * Where the log is on Kafka; empty for the embedded one.
   *
   * @param started the broker that was started because none is named
   */
  Optional<KafkaOfDemo> onKafka(Clock clock, Optional<String> started) {
    return started
        .or(() -> Optional.ofNullable(bootstrap))
        .map(
            broker ->
                new KafkaOfDemo(
                    broker,
                    Optional.ofNullable(prefix)
                        .orElseGet(() -> "withers-demo-" + STAMP.format(clock.instant()))));
  }
}
