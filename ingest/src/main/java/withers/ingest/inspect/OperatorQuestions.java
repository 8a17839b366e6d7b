package withers.ingest.inspect;

import java.util.ArrayList;
import java.util.List;

/** What no file tells, so that the operator is always asked. */
final class OperatorQuestions {

  private OperatorQuestions() {}

  static List<Question> of(Answers answers) {
    List<Question> questions = new ArrayList<>();
    questions.add(
        new Question(
            "organisation",
            "Whose records are these? The id of an organisation in organisations.yaml",
            List.of()));
    questions.add(
        new Question(
            "extent",
            "How much is in an export: everything that the source holds, what changed since the last one, or what is dated from one day to another?",
            List.of("full", "changes", "window")));
    questions.add(
        new Question(
            "coverage",
            "For what can the source speak: for all records of the organisation, or for one account's slice of them?",
            List.of("whole", "account")));
    questions.removeIf(question -> answers.has(question.about()));
    return questions;
  }
}
