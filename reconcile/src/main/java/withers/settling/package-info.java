/** How what a person says of a follow-up becomes what is settled, and is written down. */
@NullMarked
package withers.settling;

import org.jspecify.annotations.NullMarked;
