/** Source profiles: how one source's exports are recognised, read and understood. */
@NullMarked
package withers.ingest.profile;

import org.jspecify.annotations.NullMarked;
