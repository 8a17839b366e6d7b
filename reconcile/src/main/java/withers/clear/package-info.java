/** Which animals were clear, kept from run to run. */
@NullMarked
package withers.clear;

import org.jspecify.annotations.NullMarked;
