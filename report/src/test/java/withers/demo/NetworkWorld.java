package withers.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;

/**
 * A network in which most is as it should be, in the demo's layout and workspace: made to measure
 * with, at any size. The stories stand at the end of the files, as in the demo.
 */
public final class NetworkWorld {

  /** Fewer would be each other's strangers and neighbours at once. */
  private static final int LEAST_PEOPLE = 20;

  private NetworkWorld() {}

  /**
   * Writes the exports of both rounds. The next round says what the first one said, but for the
   * rows that came late, were corrected or changed.
   *
   * @param animals how many, from 0 to 50,000,000, beside those of the stories
   * @param folder made if it is missing; files of the same names are replaced
   */
  public static void generate(long seed, int animals, Shares shares, Path folder) {
    try {
      DemoWorld.copyWorkspace(folder);
      exports(seed, animals, shares, folder);
    } catch (IOException unwritable) {
      throw new UncheckedIOException(unwritable);
    }
  }

  private static void exports(long seed, int animals, Shares shares, Path folder)
      throws IOException {
    int persons = Math.max(LEAST_PEOPLE, (int) (animals * shares.people()));
    try (Exports exports = new Exports(folder)) {
      for (int number = 0; number < animals; number++) {
        Dice dice = Dice.of(seed, "share", number);
        boolean troubled = dice.share(shares.trouble());
        Ledger ledger =
            troubled ? Lives.troubled(seed, number, persons) : quiet(seed, number, persons);
        exports.write(ledger, new NextMonth(seed, shares, dice.share(shares.late())));
      }
      exports.write(Supplies.ledger(seed, animals));
      exports.write(StoryTables.ledger());
    }
  }

  private static Ledger quiet(long seed, int number, int persons) {
    Life life = new Life(seed, number, persons, dice -> Trouble.NONE);
    new QuietLife(life).live();
    return life.ledger;
  }
}
