/** What scripts read: results as JSON. */
@NullMarked
package withers.report.json;

import org.jspecify.annotations.NullMarked;
