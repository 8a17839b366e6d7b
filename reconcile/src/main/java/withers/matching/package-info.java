/**
 * Weighs two contacts against each other: how each trait compares, what that says, and the verdict.
 * The sentences stand in docs/matching.md. Pure; nothing here shows details.
 */
@NullMarked
package withers.matching;

import org.jspecify.annotations.NullMarked;
