package withers.slip;

import withers.contact.ContactRef;

/** Takes a number and somebody who is registered under it. */
@FunctionalInterface
public interface PersonTaker {

  /**
   * Takes one.
   *
   * @param number packed
   */
  void take(long number, ContactRef person);
}
