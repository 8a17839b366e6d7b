/** What the coordinator is told: figures about a run, and no person. */
@NullMarked
package withers.report.overview;

import org.jspecify.annotations.NullMarked;
