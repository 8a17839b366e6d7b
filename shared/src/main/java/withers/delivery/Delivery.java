package withers.delivery;

import java.time.LocalDate;
import java.util.List;
import withers.id.OrganisationId;

/**
 * One step in bringing a list to its reader by mail. Readers are organisations by id: no address
 * and no person is in it.
 *
 * @param recipient whose list it is
 * @param run the run that the list was made of; with the recipient, the mail's identity
 * @param asOf the day that the run judged
 * @param on the day of the step, in the workspace's zone
 * @param told in a {@link Step#PENDING} step, the references of the follow-ups that the recipient
 *     knows of once the mail is there, in order: those on the list, and those of earlier lists that
 *     are open though this one can't show them; else empty
 * @param words what the server answered, or what came in between; short, one line, without
 *     addresses
 */
public record Delivery(
    OrganisationId recipient,
    String run,
    LocalDate asOf,
    LocalDate on,
    Step step,
    List<String> told,
    String words) {

  public Delivery {
    told = List.copyOf(told);
  }

  /** The same delivery, a step further. */
  public Delivery then(Step next, LocalDate day, String answer) {
    return new Delivery(recipient, run, asOf, day, next, List.of(), answer);
  }

  /** What happened to the mail. */
  public enum Step {
    /** It is about to be handed over. Without a later step nobody knows what became of it. */
    PENDING,
    /** The server took it over. */
    ACCEPTED,
    /** The server refused it for good. */
    REFUSED,
    /** It could not be handed over now, and the server does not have it. */
    POSTPONED,
    /**
     * The connection, or the program, ended after the mail was given and before the answer came.
     */
    UNSURE,
    /** The operator found out that it arrived. */
    ARRIVED,
    /** The operator found out that it did not arrive. */
    LOST
  }
}
