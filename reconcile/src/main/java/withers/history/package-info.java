/**
 * From what sources said about a number to the statements in effect: the law of the fold. The
 * sentences stand in docs/findings.md under "Statements".
 */
@NullMarked
package withers.history;

import org.jspecify.annotations.NullMarked;
