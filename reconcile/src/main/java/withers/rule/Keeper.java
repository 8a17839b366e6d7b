package withers.rule;

import java.time.LocalDate;
import withers.custody.Tenure;
import withers.custody.Versions;
import withers.finding.Who;
import withers.history.Statement;

/** A custodian who is a person, in all versions. */
record Keeper(Tenure tenure, Versions versions) {

  LocalDate since() {
    return tenure.since();
  }

  Statement start() {
    return tenure.start();
  }

  Who who() {
    return tenure.who();
  }
}
