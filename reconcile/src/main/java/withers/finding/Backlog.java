package withers.finding;

import java.time.LocalDate;
import java.util.List;
import withers.cases.CaseKey;
import withers.id.OrganisationId;

/**
 * What is left of the follow-ups that an organisation began with: those that were opened by the
 * first run that found anything for it.
 *
 * @param since the day that run judged
 * @param followUps those that were found again, in the order of the findings; at least one
 * @param waiting those of them that its list does not show yet: they come up as others are settled
 */
public record Backlog(
    OrganisationId organisation, LocalDate since, List<CaseKey> followUps, List<CaseKey> waiting) {
  public Backlog {
    followUps = List.copyOf(followUps);
    waiting = List.copyOf(waiting);
  }
}
