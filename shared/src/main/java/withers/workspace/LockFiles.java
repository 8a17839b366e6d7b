package withers.workspace;

import java.nio.file.Path;

/**
 * The files of a lock.
 *
 * @param lock what is locked
 * @param holder who holds it, in words
 * @param workspace whose lock it is
 */
record LockFiles(Path lock, Path holder, Path workspace) {

  static LockFiles in(Path folder, String name, Path workspace) {
    return new LockFiles(
        folder.resolve(name + ".lock"), folder.resolve(name + ".lock.holder"), workspace);
  }

  WorkspaceBusyException busy() {
    return new WorkspaceBusyException(workspace.toString(), LockHolder.read(holder));
  }
}
