package withers.corpus;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import withers.matching.Verdict;

/**
 * How often what was said of some pairs. Same person is said by the verdicts {@code SAME} and
 * {@code DETAILS_DIFFER}. Shares are percent, NaN of nothing.
 */
public record Tally(long pairs, long onePerson, long saidSame, long rightlySame, List<Long> said) {

  private static final List<Verdict> VERDICTS = List.of(Verdict.values());

  static Tally of(Collection<Judged> judged) {
    return new Tally(
        judged.size(),
        count(judged, Judged::isOnePerson),
        count(judged, one -> one.verdict().isSamePerson()),
        count(judged, one -> one.isOnePerson() && one.verdict().isSamePerson()),
        VERDICTS.stream().map(said -> count(judged, one -> one.verdict() == said)).toList());
  }

  private static long count(Collection<Judged> judged, Predicate<Judged> which) {
    return judged.stream().filter(which).count();
  }

  /** Of those said to be one person, how many are. */
  public double precision() {
    return rightlySame * 100.0 / saidSame;
  }

  /** Of those that are one person, how many are said to be. */
  public double recall() {
    return rightlySame * 100.0 / onePerson;
  }

  public double said(Verdict verdict) {
    return said.get(VERDICTS.indexOf(verdict)) * 100.0 / pairs;
  }

  /** Precision, recall and what cannot be told, as cells. */
  String quality() {
    return cells(List.of(precision(), recall(), said(Verdict.CANNOT_TELL)));
  }

  /** The shares of the verdicts, from same to different, as cells. */
  String verdicts() {
    return cells(VERDICTS.stream().map(this::said).toList());
  }

  private String cells(List<Double> shares) {
    StringBuilder cells = new StringBuilder(" | " + pairs);
    for (double share : shares) {
      cells.append(Double.isNaN(share) ? " | -" : String.format(Locale.ROOT, " | %.1f", share));
    }
    return cells + " |";
  }
}
