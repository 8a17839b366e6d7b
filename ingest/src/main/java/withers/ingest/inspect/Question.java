package withers.ingest.inspect;

import java.util.List;

/**
 * Something that only the operator can tell.
 *
 * @param about what it is about: a field as the profile writes it, or {@code kind}, {@code date},
 *     {@code columns}, {@code extent} and the like
 * @param text the question, without anything that is in a cell
 * @param choices what the answer can be, as far as it is known; headers or words of the profile
 */
public record Question(String about, String text, List<String> choices) {
  public Question {
    choices = List.copyOf(choices);
  }
}
