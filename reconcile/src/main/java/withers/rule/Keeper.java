package withers.rule;

import java.time.LocalDate;
import java.util.Set;
import withers.custody.Tenure;
import withers.custody.Versions;
import withers.finding.NotJudged;
import withers.finding.Who;
import withers.history.Statement;

/**
 * A custodian who is a person.
 *
 * @param versions the person in all versions
 * @param lacking what is lacking for registries to be current since the start; nothing when they
 *     are
 */
public record Keeper(Tenure tenure, Versions versions, Set<NotJudged> lacking) {

  public Keeper {
    lacking = Set.copyOf(lacking);
  }

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
