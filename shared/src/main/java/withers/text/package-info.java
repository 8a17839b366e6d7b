/**
 * Text that others read: cells that spreadsheets would take for formulas, and what people type in
 * their own words.
 */
@NullMarked
package withers.text;

import org.jspecify.annotations.NullMarked;
