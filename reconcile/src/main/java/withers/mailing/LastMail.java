package withers.mailing;

import java.time.LocalDate;
import java.util.Set;

/**
 * The last mail that came through to an organisation.
 *
 * @param on the day on which it was sent, in the workspace's zone
 * @param told references of the follow-ups that the organisation knows of since
 */
public record LastMail(LocalDate on, Set<String> told) {
  public LastMail {
    told = Set.copyOf(told);
  }
}
