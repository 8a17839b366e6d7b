package withers.contacts;

import withers.matching.Verdict;

/**
 * How two contacts that are not equal stand.
 *
 * @param alike whether a phone or mailbox of both is the same
 */
record Standing(Verdict verdict, boolean alike) {}
