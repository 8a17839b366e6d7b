/** The demo: an invented network, two monthly rounds, in a folder of its own. */
@NullMarked
package withers.report.demo;

import org.jspecify.annotations.NullMarked;
