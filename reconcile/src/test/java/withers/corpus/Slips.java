package withers.corpus;

import java.util.List;
import java.util.Map;

/** Slips of fingers and ears: each answers the text itself when there is nothing to slip on. */
final class Slips {
  private static final List<String> ROWS = List.of("qwertyuiop", "asdfghjkl", "zxcvbnm");
  private static final Map<String, List<String>> ALIKE = Spoken.read("sound-alikes.txt");

  private Slips() {}

  /** One key beside the right one, one key twice, one not at all, or two in the wrong order. */
  static String typed(String text, Dice dice) {
    if (text.length() < 3) {
      return text;
    }
    int at = 1 + dice.below(text.length() - 1);
    return switch (dice.below(4)) {
      case 0 -> text.substring(0, at) + beside(text.charAt(at), dice) + text.substring(at + 1);
      case 1 -> text.substring(0, at) + text.charAt(at) + text.substring(at);
      case 2 -> text.substring(0, at) + text.substring(at + 1);
      default -> transposed(text, at);
    };
  }

  private static String transposed(String text, int at) {
    int first = Math.min(at, text.length() - 2);
    char one = text.charAt(first);
    return text.substring(0, first) + text.charAt(first + 1) + one + text.substring(first + 2);
  }

  /** The key to the left or right on an English keyboard; other signs have none. */
  private static char beside(char key, Dice dice) {
    for (String row : ROWS) {
      int at = row.indexOf(key);
      if (at >= 0) {
        int near = at == 0 ? 1 : at == row.length() - 1 || dice.chance(50) ? at - 1 : at + 1;
        return row.charAt(near);
      }
    }
    return key;
  }

  /** One place, not the first letter, spelled as it sounds. */
  static String heard(String text, Dice dice) {
    List<String> sounds =
        ALIKE.keySet().stream().sorted().filter(sound -> text.indexOf(sound, 1) > 0).toList();
    if (sounds.isEmpty()) {
      return text;
    }
    String sound = dice.one(sounds);
    int at = text.indexOf(sound, 1);
    return text.substring(0, at) + dice.one(ALIKE.get(sound)) + text.substring(at + sound.length());
  }
}
