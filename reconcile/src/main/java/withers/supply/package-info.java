/**
 * Which numbers were supplied to whom, and which of them nobody has heard of since. The sentences
 * stand in docs/findings.md. Pure.
 */
@NullMarked
package withers.supply;

import org.jspecify.annotations.NullMarked;
