/**
 * What a run found: findings with their evidence, certainty and priority, and what could not be
 * judged.
 */
@NullMarked
package withers.finding;

import org.jspecify.annotations.NullMarked;
