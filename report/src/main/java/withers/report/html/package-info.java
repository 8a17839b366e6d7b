/** Lists and overview as pages that need nothing beside themselves. */
@NullMarked
package withers.report.html;

import org.jspecify.annotations.NullMarked;
