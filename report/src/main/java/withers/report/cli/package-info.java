/** The command line of the application. */
@NullMarked
package withers.report.cli;

import org.jspecify.annotations.NullMarked;
