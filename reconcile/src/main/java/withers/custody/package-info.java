/**
 * Who has the animal: the trail of its handovers, and the custodian that follows from it and from
 * visits. The sentences stand in docs/findings.md.
 */
@NullMarked
package withers.custody;

import org.jspecify.annotations.NullMarked;
