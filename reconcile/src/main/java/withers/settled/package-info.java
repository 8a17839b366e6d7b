/**
 * What people settled about follow-ups, so that the same is not asked again. The sentences stand in
 * docs/findings.md and docs/settling.md.
 */
@NullMarked
package withers.settled;

import org.jspecify.annotations.NullMarked;
