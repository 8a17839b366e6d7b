package withers.scorecard;

import java.math.BigDecimal;

/**
 * What is asked of a scorecard.
 *
 * @param atLeast percent of those whose registration can be judged who are to be reachable
 * @param atMostUnknown percent of those whom the ratio would count of whom it may not be known
 */
public record Target(BigDecimal atLeast, BigDecimal atMostUnknown) {

  /** How a scorecard meets it. */
  public enum Outcome {
    MET,
    MISSED,
    /** Of too many it can't be told; then the ratio says little, whatever it is. */
    NOT_KNOWN
  }

  /** How a scorecard meets it. */
  public Outcome of(Scorecard card) {
    if (card.reachable().whole() == 0 || !card.notKnown().isAtMost(atMostUnknown)) {
      return Outcome.NOT_KNOWN;
    }
    return card.reachable().isAtLeast(atLeast) ? Outcome.MET : Outcome.MISSED;
  }
}
