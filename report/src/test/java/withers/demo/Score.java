package withers.demo;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import withers.finding.Band;
import withers.finding.Finding;
import withers.finding.FindingKind;

/** How often findings of the urgent bands are right, and how much of the knowable was found. */
final class Score {

  private static final int MOST_MISSES = 60;

  /** Of so many, so many were good. */
  private static final class Share {
    private int all;
    private int good;

    void add(boolean isGood) {
      all++;
      good += isGood ? 1 : 0;
    }

    void add(Share other) {
      all += other.all;
      good += other.good;
    }

    double value() {
      return all == 0 ? 1 : (double) good / all;
    }

    @Override
    public String toString() {
      return all == 0 ? "none" : "%d of %d, %.3f".formatted(good, all, value());
    }
  }

  private final Map<FindingKind, Share> urgent = new EnumMap<>(FindingKind.class);
  private final Map<FindingKind, Share> later = new EnumMap<>(FindingKind.class);
  private final Map<Problem, Share> found = new EnumMap<>(Problem.class);
  private final List<String> misses = new ArrayList<>();

  void add(Map<String, Truth> truths, Map<String, Finding> findings, long seed) {
    truths.forEach(
        (chip, truth) -> {
          Optional<Finding> finding = Optional.ofNullable(findings.get(chip));
          Set<Problem> problems = truth.problems(Round.last().asOf());
          finding.ifPresent(one -> addFinding(one, problems, chip, seed));
          truth.knowable(Round.ALL).forEach(one -> addKnowable(one, finding, chip, seed));
        });
  }

  private void addFinding(Finding finding, Set<Problem> problems, String chip, long seed) {
    if (Problem.toldBy(finding.kind()).isEmpty()) {
      return;
    }
    boolean right = problems.stream().anyMatch(one -> one.isToldBy(finding.kind()));
    boolean isUrgent = finding.priority().band().compareTo(Band.THIS_WEEK) <= 0;
    (isUrgent ? urgent : later).computeIfAbsent(finding.kind(), k -> new Share()).add(right);
    if (!right && isUrgent) {
      miss(seed, chip, finding.kind().word() + " is found, but true is " + problems);
    }
  }

  /** What another row hides was found, too: one row an animal. */
  private void addKnowable(Problem knowable, Optional<Finding> finding, String chip, long seed) {
    boolean isFound =
        finding
            .filter(f -> knowable.isToldBy(f.kind()) || knowable.isHiddenBy(f.kind()))
            .isPresent();
    found.computeIfAbsent(knowable, p -> new Share()).add(isFound);
    if (!isFound) {
      String instead = finding.map(f -> f.kind().word()).orElse("nothing");
      miss(seed, chip, knowable + " was knowable, but found is " + instead);
    }
  }

  private void miss(long seed, String chip, String what) {
    if (misses.size() < MOST_MISSES) {
      misses.add("seed " + seed + " " + chip + ": " + what);
    }
  }

  double precision() {
    return together(urgent).value();
  }

  double recall() {
    return together(found).value();
  }

  private static Share together(Map<?, Share> shares) {
    Share all = new Share();
    shares.values().forEach(all::add);
    return all;
  }

  String table() {
    StringBuilder table = new StringBuilder("\nright, in today and this-week\n");
    urgent.forEach((kind, share) -> line(table, kind.word(), share));
    line(table, "all", together(urgent));
    table.append("right, in the later bands\n");
    later.forEach((kind, share) -> line(table, kind.word(), share));
    line(table, "all", together(later));
    table.append("found, of what was knowable\n");
    found.forEach((problem, share) -> line(table, problem.name().toLowerCase(Locale.ROOT), share));
    line(table, "all", together(found));
    misses.forEach(miss -> table.append(miss).append('\n'));
    return table.toString();
  }

  private static void line(StringBuilder table, String name, Share share) {
    table.append("  %-22s %s%n".formatted(name, share));
  }
}
