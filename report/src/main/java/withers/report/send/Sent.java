package withers.report.send;

import java.util.List;
import java.util.Optional;
import withers.delivery.Delivery;
import withers.delivery.Delivery.Step;
import withers.id.OrganisationId;

/**
 * What came of a sending.
 *
 * @param steps the last step of each mail that was handed over, in the order of the recipients'
 *     turns
 * @param untried whose mails were not handed over, because the server could not be used
 * @param trouble why it could not be used at last
 */
public record Sent(List<Delivery> steps, List<OrganisationId> untried, Optional<String> trouble) {
  public Sent {
    steps = List.copyOf(steps);
    untried = List.copyOf(untried);
  }

  /** Whether the server took every one of them. */
  public boolean isAll() {
    return untried.isEmpty() && steps.stream().allMatch(step -> step.step() == Step.ACCEPTED);
  }
}
