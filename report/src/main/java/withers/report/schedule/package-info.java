/** What is done by itself: when each job is due, what was done, and who wakes up for it. */
@NullMarked
package withers.report.schedule;

import org.jspecify.annotations.NullMarked;
