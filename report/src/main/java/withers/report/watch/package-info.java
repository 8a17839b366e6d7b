/**
 * What may be seen of the schedule from outside while it is up: numbers, and no details of anyone.
 */
@NullMarked
package withers.report.watch;

import org.jspecify.annotations.NullMarked;
