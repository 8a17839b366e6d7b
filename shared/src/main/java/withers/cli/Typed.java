package withers.cli;

import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine.ParameterException;
import withers.text.Remarks;
import withers.yaml.Choices;
import withers.yaml.Refusal;

/**
 * What somebody who records a fact types on the command line, checked.
 *
 * @param refusal what is thrown when it can't be taken, with a message
 */
public record Typed(Function<String, ParameterException> refusal) {

  /** One of the constants of an enum, by its name with dashes. */
  public <E extends Enum<E>> E choice(String option, Class<E> choices, String text) {
    try {
      return Choices.read(choices, text);
    } catch (Refusal wrong) {
      throw refusal.apply("%s: %s: %s".formatted(option, wrong.getMessage(), wrong.advice()));
    }
  }

  /** In which role somebody acts, such as "front desk". */
  public String role(String text) {
    String role = text.strip();
    if (!Remarks.isRole(role)) {
      throw refusal.apply(
          "Expected --by with a role of up to 40 letters such as \"front desk\", but found something else: details of people don't belong there");
    }
    return role;
  }

  /** Why somebody acts, in a sentence of one line. */
  public String reason(String text) {
    String reason = text.strip().replaceAll("\\s+", " ");
    if (reason.isEmpty() || reason.length() > Remarks.LONGEST) {
      throw refusal.apply(
          "Expected --reason with 1 to %d characters, but found %d: say in a sentence what was found out"
              .formatted(Remarks.LONGEST, reason.length()));
    }
    if (Remarks.mayReachSomebody(reason)) {
      throw refusal.apply(
          "Expected --reason without a phone, a long number or an e-mail address, but found what may be one: details of people don't belong there");
    }
    return reason;
  }

  /**
   * The day given, else today; none to come.
   *
   * @param event what happened on it, for the message: {@code it was found out}
   */
  public LocalDate day(Optional<LocalDate> given, LocalDate today, String event) {
    if (given.filter(today::isBefore).isPresent()) {
      throw refusal.apply(
          "Expected --on with a day up to today, %s, but found %s: give the day on which %s"
              .formatted(today, given.get(), event));
    }
    return given.orElse(today);
  }
}
