package withers.cli;

import java.util.Map;
import java.util.Optional;

/** Environment variables, given from outside. Immutable. */
public record Environment(Map<String, String> variables) {
  public Environment {
    variables = Map.copyOf(variables);
  }

  /** Those of this process. */
  public static Environment ofThisProcess() {
    return new Environment(System.getenv());
  }

  /** A variable's value, or empty when it is not set or blank. */
  public Optional<String> get(String name) {
    return Optional.ofNullable(variables.get(name)).filter(value -> !value.isBlank());
  }
}
