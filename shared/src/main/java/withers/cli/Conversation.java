package withers.cli;

import java.util.function.Function;

/**
 * Questions to the person at the terminal. Each has an answer that Enter gives; one that can't be
 * used is asked again.
 */
record Conversation(Console console, Operator operator) {

  /**
   * Asks one question.
   *
   * @param otherwise what Enter means; empty for none
   * @param reader makes something of what was typed, or of {@code otherwise}
   * @throws IllegalArgumentException when {@code otherwise} itself is refused
   */
  <T> T ask(String question, String otherwise, Function<String, T> reader) {
    console.say(question + (otherwise.isEmpty() ? ":" : " [" + otherwise + "]:"));
    String typed = operator.answer().orElse("").strip();
    if (typed.isEmpty()) {
      return reader.apply(otherwise);
    }
    try {
      return reader.apply(typed);
    } catch (IllegalArgumentException refused) {
      console.say("  " + refused.getMessage());
      return ask(question, otherwise, reader);
    }
  }
}
