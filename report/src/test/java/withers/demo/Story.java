package withers.demo;

import java.util.List;

/**
 * An animal of the stories and what must be found about it.
 *
 * @param chip the number that it is told under
 * @param found what each round must find: a kind's name, or {@link #SILENT}
 * @param who who has to act, empty when nothing is ever found
 * @param sentence what happened, and why this follows
 */
record Story(
    String chip, String animal, String species, List<String> found, String who, String sentence) {

  static final String SILENT = "silent";

  Story {
    found = List.copyOf(found);
  }

  /** What the round must find. */
  String found(Round round) {
    return found.get(round.number() - 1);
  }
}
