package withers.ingest.inspect;

import java.util.Map;
import java.util.Optional;

/**
 * What the operator has told already.
 *
 * @param byQuestion the answer by what the question is about: {@code organisation}, {@code extent},
 *     {@code coverage}
 */
public record Answers(Map<String, String> byQuestion) {

  /** Nothing yet. */
  public static final Answers NONE = new Answers(Map.of());

  public Answers {
    byQuestion = Map.copyOf(byQuestion);
  }

  boolean has(String about) {
    return byQuestion.containsKey(about);
  }

  Optional<String> to(String about) {
    return Optional.ofNullable(byQuestion.get(about));
  }
}
