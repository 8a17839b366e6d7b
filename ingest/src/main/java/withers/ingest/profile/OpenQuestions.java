package withers.ingest.profile;

import java.util.List;
import withers.yaml.Fields;
import withers.yaml.Problems;
import withers.yaml.YamlText;

/** Questions that a proposed profile still holds. As long as there is one, nothing is imported. */
final class OpenQuestions {

  private static final String KEY = "open-questions";

  private OpenQuestions() {}

  static void refuse(Fields fields, Problems problems) {
    List<YamlText> questions = fields.textNodes(KEY);
    for (YamlText question : questions) {
      problems.add(
          question.place(),
          KEY,
          "Expected no open question, but found one about \"%s\"".formatted(about(question.text())),
          "answer it in the profile, then take it out of this list");
    }
    if (questions.isEmpty() && fields.has(KEY)) {
      fields.problem(KEY, "Expected a list of questions, but found something else", "take it out");
    }
  }

  private static String about(String question) {
    int colon = question.indexOf(':');
    return colon > 0 ? question.substring(0, colon) : question;
  }
}
