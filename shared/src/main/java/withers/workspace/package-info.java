/**
 * A workspace: the folder with settings, directory, log, vault and everything that is read and
 * written.
 */
@NullMarked
package withers.workspace;

import org.jspecify.annotations.NullMarked;
