/** Reads spreadsheets (ISO/IEC 29500, SpreadsheetML), within bounds and without guessing. */
@NullMarked
package withers.ingest.xlsx;

import org.jspecify.annotations.NullMarked;
