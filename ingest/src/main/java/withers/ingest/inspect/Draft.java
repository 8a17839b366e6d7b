package withers.ingest.inspect;

import java.util.ArrayList;
import java.util.List;

/**
 * A proposal as the text of a source profile. Open questions stand in it under {@code
 * open-questions}, and as long as one does, the profile is refused.
 */
public record Draft(Proposal proposal, Writing writing, Answers answers) {

  private static final int LONGEST_ID = 40;

  /** An id for the source, made from the file's name without dates. */
  public String sourceId() {
    String stem = withoutDates(Folding.words(stem()).replace(' ', '-'), "");
    String slug = stem.replaceAll("[^a-z0-9]+", "-").replaceAll("^-+|-+$", "");
    String id = slug.substring(0, Math.min(slug.length(), LONGEST_ID)).replaceAll("-+$", "");
    return id.isEmpty() ? "source" : id;
  }

  /** The file's name with a star for each date, so that the next export's name fits too. */
  String filePattern() {
    String pattern = withoutDates(base(), "*").replaceAll("\\*(?:[-_.]*\\*)+", "*");
    return pattern.replaceAll("[\\[\\]{}?\\\\]", "?");
  }

  private String stem() {
    int dot = base().lastIndexOf('.');
    return dot > 0 ? base().substring(0, dot) : base();
  }

  private String base() {
    return proposal.file().substring(proposal.file().lastIndexOf('/') + 1);
  }

  private static String withoutDates(String name, String instead) {
    return name.replaceAll("[0-9]{4}([-_.]?)[0-9]{2}\\1[0-9]{2}", instead);
  }

  /** The YAML. */
  public String text() {
    return new DraftText(this).write();
  }

  /** All questions: how the file is written, what it holds, and what only the operator knows. */
  public List<Question> questions() {
    List<Question> questions = new ArrayList<>(writing.doubts());
    questions.addAll(proposal.questions());
    return List.copyOf(questions);
  }
}
