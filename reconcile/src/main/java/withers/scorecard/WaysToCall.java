package withers.scorecard;

import withers.contacts.People;
import withers.finding.Who;

/** Whether two people's contacts lead to the same telephone or mailbox. */
record WaysToCall(People people) {

  boolean agree(Who one, Who other) {
    return people.areReachedAlike(one, other);
  }

  /** Whether there is a phone or e-mail of a person at all. */
  boolean canCall(Who who) {
    return who.person().filter(people::canBeReached).isPresent();
  }

  /** Whether details can't be told since they were forgotten. */
  boolean isForgotten(Who who) {
    return who.person().filter(person -> !people.isKnown(person)).isPresent();
  }
}
