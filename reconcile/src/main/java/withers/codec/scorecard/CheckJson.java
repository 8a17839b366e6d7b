package withers.codec.scorecard;

import withers.scorecard.Scorecard;
import withers.scorecard.Target;

/** What a check found, in figures, as JSON for scripts. */
public final class CheckJson {
  private CheckJson() {}

  /**
   * One line.
   *
   * @param file where the scorecard is kept, within the workspace
   */
  public static String write(Scorecard card, Target target, String file) {
    return ScorecardJson.line(
        json -> {
          json.text("outcome", ScorecardJson.word(target.of(card)));
          json.decimal("atLeast", target.atLeast());
          json.decimal("atMostUnknown", target.atMostUnknown());
          json.terms(card);
          json.figures(card);
          json.text("file", file);
        });
  }
}
