package withers.run;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import withers.cases.CaseKey;
import withers.finding.Band;
import withers.finding.Finding;
import withers.rule.HeldBack;

/**
 * What is known of a finding without making it anew: how much it presses, and what its follow-up
 * may be called. In the total order of findings: band, then harm descending, then key.
 *
 * @param otherNames the follow-up's other names; most have none
 * @param at where the finding stands in the list that it was taken from
 */
record Found(Band band, long harm, CaseKey key, List<CaseKey> otherNames, int at)
    implements Comparable<Found> {

  private static final Comparator<Found> ORDER =
      Comparator.comparing(Found::band)
          .thenComparing(Found::harm, Comparator.reverseOrder())
          .thenComparing(Found::key);

  static Found of(Finding finding, int at) {
    List<CaseKey> names = HeldBack.names(finding).toList();
    return new Found(
        finding.priority().band(),
        finding.priority().harm(),
        names.get(0),
        List.copyOf(names.subList(1, names.size())),
        at);
  }

  /** What the follow-up may be called, its key first. */
  Stream<CaseKey> names() {
    return otherNames.isEmpty()
        ? Stream.of(key)
        : Stream.concat(Stream.of(key), otherNames.stream());
  }

  @Override
  public int compareTo(Found other) {
    return ORDER.compare(this, other);
  }
}
