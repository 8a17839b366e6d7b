/**
 * How events and markers become bytes and JSON, and back: one table of names, versions and fields.
 */
@NullMarked
package withers.codec;

import org.jspecify.annotations.NullMarked;
