package withers.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/** A world of which everything is known: its exports, and what is true of each animal. */
final class TrueWorld {

  private TrueWorld() {}

  /**
   * Writes the exports of two months in the layout of the demo's.
   *
   * @return what is true, by the number of each animal's chip
   */
  static Map<String, Truth> write(long seed, int animals, Path folder) {
    DemoWorld.generate(seed, 0, folder);
    Map<String, Truth> truths = new LinkedHashMap<>();
    try (Exports exports = new Exports(folder)) {
      for (int number = 1; number <= animals; number++) {
        TrueLife life = new TrueLife(seed, number, Math.max(20, animals / 4 * 3));
        life.live();
        exports.write(life.ledger());
        truths.put(life.carried(), life.truth());
      }
      exports.write(Supplies.ledger(seed, animals));
    } catch (IOException unwritable) {
      throw new UncheckedIOException(unwritable);
    }
    return truths;
  }
}
