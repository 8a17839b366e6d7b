/** Puts a run's lists, overview and mail where people find them, whole and for their owner only. */
@NullMarked
package withers.report.publish;

import org.jspecify.annotations.NullMarked;
