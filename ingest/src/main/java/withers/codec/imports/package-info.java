/** What an import did, as JSON for scripts. */
@NullMarked
package withers.codec.imports;

import org.jspecify.annotations.NullMarked;
