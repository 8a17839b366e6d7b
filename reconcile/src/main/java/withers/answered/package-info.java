/**
 * What organisations answered about their follow-ups, and until when these rest by it. Pure. The
 * sentences stand in docs/answers.md.
 */
@NullMarked
package withers.answered;

import org.jspecify.annotations.NullMarked;
