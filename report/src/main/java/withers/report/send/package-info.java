/** Sends lists by mail: once each, with a record of what became of every one. */
@NullMarked
package withers.report.send;

import org.jspecify.annotations.NullMarked;
