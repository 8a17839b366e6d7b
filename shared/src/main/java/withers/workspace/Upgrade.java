package withers.workspace;

import java.io.IOException;
import java.io.UncheckedIOException;
import withers.point.Point;
import withers.sqlite.Upgrading;

/**
 * Brings stores of an older format up while nobody else writes, an older program least of all: it
 * would go on writing what it knows.
 */
record Upgrade(Workspace workspace, BeforeUpgrade before) implements Upgrading {

  @Override
  public void around(Outdated store) {
    if (isLockedHere()) {
      bringUp(store);
    } else {
      workspace.whileLocked("upgrade", () -> bringUp(store));
    }
  }

  private boolean isLockedHere() {
    try {
      return WorkspaceLock.isHeldHere(workspace.paths().lock());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private boolean bringUp(Outdated store) {
    if (store.isStill()) {
      before.done(workspace, store);
      workspace.points().reached(Point.UPGRADE_BACKED_UP);
      store.bringUp();
    }
    return true;
  }
}
