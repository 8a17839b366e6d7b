/**
 * How urgent a finding is: a band and an expected harm, from one table of weights. The weights and
 * their sources stand in docs/priorities.md.
 */
@NullMarked
package withers.priority;

import org.jspecify.annotations.NullMarked;
