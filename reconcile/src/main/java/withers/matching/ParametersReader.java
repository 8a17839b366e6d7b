package withers.matching;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import withers.yaml.Fields;
import withers.yaml.Problems;
import withers.yaml.YamlFiles;
import withers.yaml.YamlMap;

/** Reads parameters of matching, in the form that {@link ParametersWriter} writes. */
public final class ParametersReader {
  static final String BUILT_IN = "parameters.yaml";

  private static final Shares ANY = new Shares(0.5, 0.5, 0.5);
  private static final Prior ANY_PRIOR = new Prior(0.1, 0.1);
  private static final Costs ANY_COSTS = new Costs(10, 10);

  private ParametersReader() {}

  static Parameters builtIn() {
    Problems problems = new Problems();
    Optional<Parameters> read =
        YamlFiles.parse(BUILT_IN, text(), problems).flatMap(map -> read(map, problems));
    problems.throwIfAny();
    return read.orElseThrow();
  }

  private static String text() {
    try (InputStream in =
        Objects.requireNonNull(ParametersReader.class.getResourceAsStream(BUILT_IN), BUILT_IN)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(BUILT_IN, unreadable);
    }
  }

  /**
   * Reads them and notes all mistakes.
   *
   * @return empty when there is a mistake
   */
  public static Optional<Parameters> read(YamlMap file, Problems problems) {
    return Fields.read(file, problems, ParametersReader::parameters);
  }

  private static Parameters parameters(Fields fields) {
    String version = fields.text("version");
    Prior prior = fields.map("prior", ParametersReader::prior, ANY_PRIOR);
    Costs costs = fields.map("costs", ParametersReader::costs, ANY_COSTS);
    Map<Trait, Map<Level, Shares>> levels = new EnumMap<>(Trait.class);
    for (Trait trait : Trait.values()) {
      levels.put(trait, fields.map(trait.word(), inner -> levels(trait, inner), Map.of()));
    }
    return new Parameters(version, prior, costs, levels);
  }

  private static Prior prior(Fields fields) {
    return new Prior(number(fields, "same-person"), number(fields, "same-household"));
  }

  private static Costs costs(Fields fields) {
    return new Costs(number(fields, "wrongly-one"), number(fields, "wrongly-two"));
  }

  private static Map<Level, Shares> levels(Trait trait, Fields fields) {
    Map<Level, Shares> levels = new EnumMap<>(Level.class);
    for (Level level : trait.levels()) {
      levels.put(level, fields.map(level.word(), ParametersReader::shares, ANY));
    }
    Parameters.require(trait, levels);
    return levels;
  }

  private static Shares shares(Fields fields) {
    return new Shares(
        number(fields, "same-person"),
        number(fields, "same-household"),
        number(fields, "strangers"));
  }

  private static double number(Fields fields, String key) {
    return fields.value(key, ParametersReader::number, 0.5);
  }

  private static double number(String text) {
    if (text.matches("[0-9]{1,9}([.][0-9]{1,15})?(e-?[0-9]{1,2})?")) {
      return Double.parseDouble(text);
    }
    throw new IllegalArgumentException(
        "Expected a number such as 0.25 or 2e-6, but found \"%s\"".formatted(text));
  }
}
