package withers.contacts;

import withers.matching.Weighing;

/**
 * How two contacts compare, that are both there.
 *
 * @param alike whether a phone or mailbox of both is the same
 */
record Comparison(Weighing weighing, boolean alike) {}
