/** Lists as mail that is ready to be sent. */
@NullMarked
package withers.report.mail;

import org.jspecify.annotations.NullMarked;
