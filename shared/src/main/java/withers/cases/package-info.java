/** The life of a follow-up, as events of their own stream. */
@NullMarked
package withers.cases;

import org.jspecify.annotations.NullMarked;
