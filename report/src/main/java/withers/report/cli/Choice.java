package withers.report.cli;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import picocli.CommandLine.ParameterException;
import withers.contact.ContactRef;
import withers.report.privacy.Match;
import withers.report.privacy.Request;

/**
 * Which of those that were found are the person.
 *
 * @param refusal what is thrown when that can't be read, with a message
 */
record Choice(Request found, Function<String, ParameterException> refusal) {

  /** References as a command line names them. */
  static Set<ContactRef> named(
      Collection<String> texts, Function<String, ParameterException> refusal) {
    List<ContactRef> read = new ArrayList<>();
    for (String text : texts) {
      try {
        read.add(ContactRef.parse(text.strip()));
      } catch (IllegalArgumentException wrong) {
        throw refusal.apply(String.valueOf(wrong.getMessage()));
      }
    }
    return Set.copyOf(read);
  }

  /** The same, all of which must have been found. */
  Set<ContactRef> requireFound(Set<ContactRef> named) {
    Set<ContactRef> unknown = new HashSet<>(named);
    unknown.removeAll(found.references());
    if (unknown.isEmpty()) {
      return named;
    }
    throw refusal.apply(
        "Expected references that this person's details lead to, but found others (%s): run it without these to see them; nothing was done"
            .formatted(
                unknown.stream().map(String::valueOf).sorted().collect(Collectors.joining(", "))));
  }

  /** What a person answered: numbers, or all; none when nothing was said. */
  Set<ContactRef> read(String answer) {
    if (answer.isEmpty()) {
      return Set.of();
    }
    if (answer.equalsIgnoreCase("all")) {
      return found.references();
    }
    Set<ContactRef> chosen = new HashSet<>();
    for (String number : answer.split("[\\s,]+")) {
      chosen.add(numbered(number).reference());
    }
    return chosen;
  }

  private Match numbered(String number) {
    boolean isOne = number.matches("[1-9][0-9]{0,5}");
    if (!isOne || Integer.parseInt(number) > found.matches().size()) {
      throw refusal.apply(
          "Expected numbers from 1 to %d, or \"all\", but found something else: nothing was done"
              .formatted(found.matches().size()));
    }
    return found.matches().get(Integer.parseInt(number) - 1);
  }
}
