/** Text in cells that spreadsheets open: what they would take it for, and how it stays text. */
@NullMarked
package withers.text;

import org.jspecify.annotations.NullMarked;
