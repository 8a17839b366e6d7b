package withers.workspace;

import withers.sqlite.Upgrading.Outdated;

/** What is done before a store of an older format is brought up to this program's. */
@FunctionalInterface
public interface BeforeUpgrade {

  /** Nothing: for a copy whose original stays. */
  BeforeUpgrade NOTHING = (workspace, store) -> {};

  /** Stores of an older format stay as they are, and can't be used. */
  BeforeUpgrade REFUSED =
      (workspace, store) -> {
        throw store.refusal();
      };

  /**
   * Does it, holding the right to write; when it throws, nothing is brought up.
   *
   * @param store of the workspace
   */
  void done(Workspace workspace, Outdated store);
}
