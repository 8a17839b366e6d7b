/** Manual pages and the shell's completion, made from what the commands say of themselves. */
@NullMarked
package withers.report.manual.cli;

import org.jspecify.annotations.NullMarked;
