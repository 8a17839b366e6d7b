/**
 * How many of a group of clinics' patients could be brought home by their number, with every
 * denominator written down. The sentences stand in docs/scorecard.md.
 */
@NullMarked
package withers.scorecard;

import org.jspecify.annotations.NullMarked;
