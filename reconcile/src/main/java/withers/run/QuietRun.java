package withers.run;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import withers.cases.CaseKey;
import withers.chip.ChipNumber;
import withers.custody.Discretion;
import withers.finding.Backlog;
import withers.finding.Finding;
import withers.finding.RunResult;
import withers.packed.LazyList;

/** A run that was made before something was marked as confidential, as it is told since. */
public final class QuietRun {
  private final Discretion discretion;

  private QuietRun(Discretion discretion) {
    this.discretion = discretion;
  }

  /** The run without what nothing is told of. */
  public static RunResult of(RunResult run, Discretion discretion) {
    return discretion.isNone() ? run : new QuietRun(discretion).quiet(run);
  }

  private RunResult quiet(RunResult run) {
    return new RunResult(
        run.id(),
        run.asOf(),
        run.knownBy(),
        run.animals(),
        findings(run.findings()),
        told(run.notJudged(), one -> discretion.numbers().contains(one.anchor())),
        told(run.questions(), one -> isSilent(one.chips())),
        keys(run.opened()),
        keys(run.stillOpen()),
        keys(run.closed()),
        run.backlogs().stream().flatMap(this::backlog).toList(),
        keys(run.aside()),
        keys(run.settled()),
        told(run.lives(), one -> discretion.covers(one.key())));
  }

  /** Which they are: a lazy list stays one. */
  private List<Finding> findings(List<Finding> all) {
    return LazyList.at(
        IntStream.range(0, all.size()).filter(index -> !isSilent(all.get(index))), all);
  }

  private boolean isSilent(Finding finding) {
    return isSilent(finding.chips()) || discretion.covers(finding.caseKey());
  }

  private static <T> List<T> told(List<T> all, Predicate<T> isSilent) {
    return all.stream().filter(isSilent.negate()).toList();
  }

  private boolean isSilent(List<ChipNumber> chips) {
    return chips.stream().anyMatch(discretion.numbers()::contains);
  }

  private List<CaseKey> keys(List<CaseKey> keys) {
    return told(keys, discretion::covers);
  }

  private Stream<Backlog> backlog(Backlog backlog) {
    List<CaseKey> left = keys(backlog.followUps());
    return left.isEmpty()
        ? Stream.empty()
        : Stream.of(
            new Backlog(backlog.organisation(), backlog.since(), left, keys(backlog.waiting())));
  }
}
