/** The command that keeps the schedule. */
@NullMarked
package withers.report.schedule.cli;

import org.jspecify.annotations.NullMarked;
