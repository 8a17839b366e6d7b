package withers.custody;

import java.time.LocalDate;
import java.util.Optional;
import withers.fact.Party;
import withers.finding.Who;
import withers.history.Statement;

/**
 * Somebody's time as the custodian.
 *
 * @param who the custodian; nobody when a lasting handover names no receiver
 * @param party as the start names it
 * @param start the handover or visit that it starts with
 * @param confirmedBy for a change by visits, the second visit
 */
public record Tenure(Who who, Party party, Statement start, Optional<Statement> confirmedBy) {

  /** The day on which it starts. */
  public LocalDate since() {
    return start.day();
  }

  /** When the start was first stated; for a change by visits, the later of the two. */
  public LocalDate knownSince() {
    LocalDate first = start.firstStated();
    return confirmedBy.map(Statement::firstStated).filter(first::isBefore).orElse(first);
  }

  /** The custodian, if it is a person. */
  public Optional<Who.Person> person() {
    return who.person();
  }
}
