/** Who saw, and who had removed, what is held on people. */
@NullMarked
package withers.audit;

import org.jspecify.annotations.NullMarked;
