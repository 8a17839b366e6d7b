package withers.matching;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Writes parameters as a file that {@link ParametersReader} and a person can read. */
public final class ParametersWriter {
  private ParametersWriter() {}

  /**
   * The text of the file.
   *
   * @param remarks lines that say where the numbers come from; they become comments
   */
  public static String write(Parameters parameters, List<String> remarks) {
    StringBuilder text = new StringBuilder();
    remarks.forEach(remark -> text.append("# ").append(remark).append('\n'));
    text.append("version: ").append(quoted(parameters.version())).append('\n');
    text.append(prior(parameters.prior())).append(costs(parameters.costs()));
    for (Trait trait : Trait.values()) {
      text.append(trait(parameters, trait));
    }
    return text.toString();
  }

  private static String quoted(String text) {
    return "\"" + text.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
  }

  private static String prior(Prior prior) {
    return "prior: {same-person: %s, same-household: %s}\n"
        .formatted(number(prior.samePerson()), number(prior.sameHousehold()));
  }

  private static String costs(Costs costs) {
    return "costs: {wrongly-one: %s, wrongly-two: %s}\n"
        .formatted(number(costs.wronglyOne()), number(costs.wronglyTwo()));
  }

  private static String trait(Parameters parameters, Trait trait) {
    return trait.word()
        + ":\n"
        + trait.levels().stream()
            .map(level -> level(level, parameters.shares(trait, level)))
            .collect(Collectors.joining());
  }

  private static String level(Level level, Shares shares) {
    return "  %s {same-person: %s, same-household: %s, strangers: %s}\n"
        .formatted(
            level.word() + ":",
            number(shares.samePerson()),
            number(shares.sameHousehold()),
            number(shares.strangers()));
  }

  /** Five digits that count: what is estimated is not known better. */
  static String number(double number) {
    String text = String.format(Locale.ROOT, "%.5g", number);
    return text.contains("e")
        ? exponent(text)
        : text.replaceAll("(\\.\\d*?)0+$", "$1").replaceAll("\\.$", "");
  }

  private static String exponent(String text) {
    int e = text.indexOf('e');
    return text.substring(0, e).replaceAll("(\\.\\d*?)0+$", "$1").replaceAll("\\.$", "")
        + "e"
        + Integer.parseInt(text.substring(e + 1));
  }
}
