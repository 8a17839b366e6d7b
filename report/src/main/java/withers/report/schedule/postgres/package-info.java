/** What was done of jobs, kept in a PostgreSQL database by several schedulers together. */
@NullMarked
package withers.report.schedule.postgres;

import org.jspecify.annotations.NullMarked;
