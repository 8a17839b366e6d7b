/**
 * Chip numbers: what a chip carries, how people and files spell it, and which spellings are none.
 */
@NullMarked
package withers.chip;

import org.jspecify.annotations.NullMarked;
