/** What all commands share: the console, common options, exit codes, and how errors are told. */
@NullMarked
package withers.cli;

import org.jspecify.annotations.NullMarked;
