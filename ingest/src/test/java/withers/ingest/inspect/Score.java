package withers.ingest.inspect;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import withers.yaml.Choices;

/** Counts what proposals say rightly, what they ask, and what they say wrongly. */
final class Score {

  /** What became of a field. */
  enum Outcome {
    RIGHT,
    ASKED,
    WRONG
  }

  private final Map<String, int[]> byPath = new TreeMap<>();
  private final List<String> remarks = new ArrayList<>();
  private int variants;
  private int allRight;

  private static final double PERCENT = 100.0;

  void add(Variant variant, VariantFile file, Draft draft) {
    variants++;
    Proposal proposal = draft.proposal();
    Map<String, Set<String>> found = found(proposal);
    Map<String, Set<String>> truth = file.asRead(variant.truth(), draft.writing());
    Set<String> paths = new TreeSet<>(truth.keySet());
    paths.addAll(found.keySet());
    boolean right = count(variant, "(kind)", kind(variant, proposal));
    right &= count(variant, "(date)", date(variant, proposal));
    for (String path : paths) {
      right &= count(variant, path, field(path, truth, proposal, found));
    }
    right &= count(variant, "(delimiter)", delimiter(file, draft.writing()));
    count(variant, "(charset)", charset(file, draft.writing()));
    allRight += right ? 1 : 0;
  }

  private static Outcome delimiter(VariantFile file, Writing writing) {
    if (isDoubted(writing, "delimiter")) {
      return Outcome.ASKED;
    }
    return writing.text().delimiter().filter(one -> one.sign() == file.delimiter()).isPresent()
        ? Outcome.RIGHT
        : Outcome.WRONG;
  }

  private static Outcome charset(VariantFile file, Writing writing) {
    if (isDoubted(writing, "charset")) {
      return Outcome.ASKED;
    }
    return file.readsTheSameIn(writing.text().charset()) ? Outcome.RIGHT : Outcome.WRONG;
  }

  private static boolean isDoubted(Writing writing, String about) {
    return writing.doubts().stream().anyMatch(question -> question.about().equals(about));
  }

  /** What must never be wrong: chip numbers, the order of dates, and who people are. */
  static boolean isPrecious(String path) {
    boolean contact = path.contains(".") && !path.endsWith(".id");
    return contact || List.of("chip", "second-chip", "first", "last", "(date)").contains(path);
  }

  private static Outcome kind(Variant variant, Proposal proposal) {
    if (!proposal.questionsAbout("kind").isEmpty()) {
      return Outcome.ASKED;
    }
    return Choices.name(proposal.kind()).equals(variant.kind()) ? Outcome.RIGHT : Outcome.WRONG;
  }

  private static Outcome date(Variant variant, Proposal proposal) {
    if (!proposal.questionsAbout("date").isEmpty()) {
      return Outcome.ASKED;
    }
    return proposal.date().pattern().equals(variant.date()) ? Outcome.RIGHT : Outcome.WRONG;
  }

  private static Outcome field(
      String path,
      Map<String, Set<String>> truths,
      Proposal proposal,
      Map<String, Set<String>> found) {
    Set<String> truth = truths.getOrDefault(path, Set.of());
    Set<String> here = found.getOrDefault(path, Set.of());
    if (isAsked(path, truth, proposal)) {
      return Outcome.ASKED;
    }
    boolean sameColumn =
        path.equals("animal-id") && truth.equals(truths.get("key")) && here.isEmpty();
    return truth.equals(here) || sameColumn ? Outcome.RIGHT : Outcome.WRONG;
  }

  private static boolean isAsked(String path, Set<String> truth, Proposal proposal) {
    boolean kind = !proposal.questionsAbout("kind").isEmpty();
    boolean itself = !proposal.questionsAbout(path).isEmpty();
    boolean column =
        truth.stream()
            .anyMatch(
                header ->
                    proposal.questionsAbout("columns").stream()
                        .flatMap(q -> q.choices().stream())
                        .anyMatch(c -> c.startsWith('"' + header + '"')));
    boolean shown =
        proposal.questions().stream()
            .flatMap(q -> q.choices().stream())
            .anyMatch(c -> truth.stream().anyMatch(h -> c.equals(path + ": \"" + h + '"')));
    return kind || itself || column || shown || isDoubted(truth, proposal);
  }

  /** Whether it is asked what the column is, taken for another field so far. */
  private static boolean isDoubted(Set<String> truth, Proposal proposal) {
    return proposal.questions().stream()
        .flatMap(question -> question.choices().stream().limit(1))
        .anyMatch(first -> truth.stream().anyMatch(h -> first.endsWith(": \"" + h + '"')));
  }

  private static Map<String, Set<String>> found(Proposal proposal) {
    Map<String, Set<String>> found = new TreeMap<>();
    proposal
        .fields()
        .forEach(
            field -> found.computeIfAbsent(field.path(), p -> new TreeSet<>()).add(field.header()));
    Set<String> key = new TreeSet<>();
    proposal.key().headers().forEach(header -> key.add(header));
    found.put("key", key);
    return found;
  }

  private boolean count(Variant variant, String path, Outcome outcome) {
    byPath.computeIfAbsent(path, p -> new int[3])[outcome.ordinal()]++;
    if (outcome != Outcome.RIGHT) {
      remarks.add(
          "%d %s %s %s: %s"
              .formatted(variant.seed(), variant.kind(), variant.person(), path, outcome));
    }
    return outcome == Outcome.RIGHT;
  }

  int wrong(String path) {
    return byPath.getOrDefault(path, new int[3])[Outcome.WRONG.ordinal()];
  }

  Set<String> paths() {
    return byPath.keySet();
  }

  double allRightPercent() {
    return PERCENT * allRight / variants;
  }

  double fieldsRightPercent() {
    int all = byPath.values().stream().mapToInt(n -> n[0] + n[1] + n[2]).sum();
    int right = byPath.values().stream().mapToInt(n -> n[0]).sum();
    return PERCENT * right / all;
  }

  /** Everything that was not right, with the seed that shows it again. */
  String remarks() {
    return String.join("\n", remarks);
  }

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder("                                right  asked  wrong\n");
    byPath.forEach(
        (path, n) ->
            text.append(String.format(Locale.ROOT, "%-30s %6d %6d %6d%n", path, n[0], n[1], n[2])));
    return text
        + String.format(
            Locale.ROOT,
            "%d variants: everything right without a question in %.1f %%; of all fields right %.1f %%%n",
            variants,
            allRightPercent(),
            fieldsRightPercent());
  }
}
