package withers.rule;

import java.time.LocalDate;
import withers.custody.Tenure;
import withers.custody.Versions;
import withers.finding.Who;
import withers.history.Statement;

/** A custodian who is a person, in all versions. */
public record Keeper(Tenure tenure, Versions versions) {

  public LocalDate since() {
    return tenure.since();
  }

  public Statement start() {
    return tenure.start();
  }

  public Who who() {
    return tenure.who();
  }
}
