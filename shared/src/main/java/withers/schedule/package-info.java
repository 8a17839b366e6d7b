/** When jobs are due: times of day by cron expressions, on the calendar and the clock of a zone. */
@NullMarked
package withers.schedule;

import org.jspecify.annotations.NullMarked;
