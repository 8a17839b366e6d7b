/** The embedded event log: one SQLite file, a row for each compressed chunk of events. */
@NullMarked
package withers.log.sqlite;

import org.jspecify.annotations.NullMarked;
