/** The words that people read: one bundle of texts, with dates and numbers by locale. */
@NullMarked
package withers.report.text;

import org.jspecify.annotations.NullMarked;
