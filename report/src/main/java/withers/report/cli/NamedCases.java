package withers.report.cli;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.cases.Reference;
import withers.chip.ChipNumber;
import withers.chip.ChipNumberReader;
import withers.chip.Reading;
import withers.finding.FindingKind;
import withers.finding.OpenQuestion;
import withers.finding.RunResult;
import withers.workspace.Workspace;

/**
 * Finds the follow-ups of a run that somebody means.
 *
 * @param others some of which the run need not tell
 */
record NamedCases(RunResult run, Collection<CaseKey> others, Workspace workspace) {

  /** Those of the run alone. */
  NamedCases(RunResult run, Workspace workspace) {
    this(run, List.of(), workspace);
  }

  /**
   * The follow-ups that a reference names, or that are about a number, of a kind when the last word
   * is one. Open ones, those that this run closed, those that people settled, and questions.
   */
  List<CaseKey> find(List<String> words) {
    String text = String.join(" ", words).strip();
    List<CaseKey> byReference =
        all()
            .filter(key -> Reference.plain(Reference.of(key)).equals(Reference.plain(text)))
            .toList();
    return byReference.isEmpty() ? byNumber(words) : byReference;
  }

  private List<CaseKey> byNumber(List<String> words) {
    Optional<String> kind = Optional.of(words.get(words.size() - 1)).filter(NamedCases::isKind);
    List<String> number = kind.isPresent() ? words.subList(0, words.size() - 1) : words;
    return read(String.join(" ", number)).stream()
        .flatMap(chip -> all().filter(key -> isAbout(key, chip)))
        .filter(key -> kind.isEmpty() || kind.get().equals(key.rule()))
        .toList();
  }

  private static boolean isKind(String word) {
    return word.equals(OpenQuestion.WORD)
        || Stream.of(FindingKind.values()).anyMatch(kind -> kind.word().equals(word));
  }

  private Optional<ChipNumber> read(String text) {
    Reading reading = new ChipNumberReader(workspace.settings().acceptsTestNumbers()).read(text);
    return reading instanceof Reading.Accepted accepted
        ? Optional.of(accepted.number())
        : Optional.empty();
  }

  private boolean isAbout(CaseKey key, ChipNumber number) {
    boolean isAnchor = key.anchor() instanceof Anchor.Chip chip && chip.number().equals(number);
    return isAnchor
        || run.findings().stream()
            .anyMatch(f -> f.caseKey().equals(key) && f.chips().contains(number))
        || run.questions().stream()
            .anyMatch(one -> one.key().equals(key) && one.chips().contains(number));
  }

  private Stream<CaseKey> all() {
    List<CaseKey> questions = run.questions().stream().map(OpenQuestion::key).toList();
    return Stream.of(run.opened(), run.stillOpen(), run.closed(), run.settled(), others, questions)
        .flatMap(Collection::stream)
        .distinct();
  }
}
