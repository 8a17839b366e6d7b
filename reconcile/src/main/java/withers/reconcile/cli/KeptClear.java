package withers.reconcile.cli;

import java.util.List;
import java.util.Optional;
import withers.clear.ClearAnimals;
import withers.workspace.Workspace;

/** The clear animals that a workspace keeps. Whoever reads or keeps them holds its lock. */
final class KeptClear {
  private static final int FORMAT = 1;

  private final Stores stores;
  private final Optional<CacheFile> file;
  private final Optional<ClearAnimals> before;

  /**
   * Reads what is kept.
   *
   * @param stamp of what animals are judged by; empty when none are kept
   */
  KeptClear(Workspace workspace, Stores stores, Optional<String> stamp) {
    this.stores = stores;
    this.file = stamp.map(by -> new CacheFile(workspace.paths().clearAnimals(), FORMAT, by));
    this.before =
        file.flatMap(
                kept ->
                    kept.read(
                        stores.vault().size(), in -> in.readNBytes(Math.max(0, in.readInt()))))
            .map(ClearAnimals::read);
  }

  Optional<ClearAnimals> before() {
    return before;
  }

  /**
   * Keeps what a run found, and tells what the operator should know of it. A run that looks back
   * leaves what is there: the next one will look ahead.
   */
  List<String> keep(ClearAnimals found) {
    return before.filter(kept -> !found.basis().isNews(kept.basis())).isPresent()
        ? List.of()
        : file.flatMap(kept -> write(kept, found.bytes())).stream().toList();
  }

  private Optional<String> write(CacheFile kept, byte[] bytes) {
    return kept.write(
        stores.vault().size(),
        "Animals of which there is nothing to say",
        out -> {
          out.writeInt(bytes.length);
          out.write(bytes);
        });
  }
}
