/** The directory of organisations: names, aliases, accounts, carers and policies. */
@NullMarked
package withers.organisation;

import org.jspecify.annotations.NullMarked;
