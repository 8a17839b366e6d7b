/**
 * Registrations that may have been meant for an animal whose number is one slip away, looked for
 * among all numbers at once. Pure.
 */
@NullMarked
package withers.slip;

import org.jspecify.annotations.NullMarked;
