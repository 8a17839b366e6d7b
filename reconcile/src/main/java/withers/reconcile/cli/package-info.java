/** The commands that judge and trace, and the folder in which runs are kept. */
@NullMarked
package withers.reconcile.cli;

import org.jspecify.annotations.NullMarked;
