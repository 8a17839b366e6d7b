/**
 * Numbers that records have damaged: which they are, what they may have been, and the finding for
 * whoever has them. The sentences stand in docs/findings.md. Pure.
 */
@NullMarked
package withers.damage;

import org.jspecify.annotations.NullMarked;
