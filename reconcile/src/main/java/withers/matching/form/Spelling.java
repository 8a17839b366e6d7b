package withers.matching.form;

import java.util.regex.Pattern;

/**
 * Spellings of one word made alike. Folded words in, no signs. The rules are our own, from how
 * names are written in other languages' letters (general knowledge).
 */
final class Spelling {
  private Spelling() {}

  private static final String[][] UMLAUTS = {{"ae", "a"}, {"oe", "o"}, {"ue", "u"}, {"aa", "a"}};

  /** Each found wherever it stands, in this order. */
  private static final String[][] SOUNDS = {
    {"schtsch", "s"},
    {"shch", "s"},
    {"szcz", "s"},
    {"stsch", "s"},
    {"tsch", "c"},
    {"tch", "c"},
    {"dsch", "j"},
    {"sch", "s"},
    {"ch", "c"},
    {"cz", "c"},
    {"sh", "s"},
    {"sz", "s"},
    {"zh", "z"},
    {"rz", "z"},
    {"kh", "h"},
    {"dj", "j"},
    {"dzh", "j"},
    {"ph", "f"},
    {"th", "t"},
    {"gh", "g"},
    {"dh", "d"},
    {"bh", "b"},
    {"ck", "k"},
    {"qu", "kv"},
    {"cs", "c"},
    {"ts", "s"},
    {"tz", "s"},
    {"ce", "se"},
    {"ci", "si"},
    {"cy", "si"},
    {"x", "ks"},
    {"q", "k"},
    {"w", "v"},
    {"z", "s"},
    {"dt", "t"},
    {"ou", "u"},
    {"oo", "u"},
    {"ee", "i"},
    {"ij", "i"},
    {"ey", "i"},
    {"ei", "i"},
    {"ai", "i"},
    {"ay", "i"},
    {"y", "i"},
    {"j", "i"},
    {"ie", "i"}
  };

  private static final String[][] ENDS = {{"off", "ov"}, {"eff", "ev"}, {"of", "ov"}, {"ef", "ev"}};

  /** What a woman's form of a family name ends with, and a man's. */
  private static final String[][] WOMEN_S = {
    {"opoulou", "opoulos"},
    {"idou", "idis"},
    {"adou", "adis"},
    {"iene", "as"},
    {"aite", "as"},
    {"dottir", "son"},
    {"skaya", "ski"},
    {"skaja", "ski"},
    {"skaia", "ski"},
    {"ckaya", "cki"},
    {"ska", "ski"},
    {"cka", "cki"},
    {"dzka", "dzki"},
    {"ova", ""},
    {"owa", ""},
    {"eva", ""},
    {"ewa", ""},
    {"ov", ""},
    {"ow", ""},
    {"ev", ""},
    {"ew", ""},
    {"off", ""},
    {"ina", "in"},
    {"aya", "i"},
    {"skiy", "ski"},
    {"skij", "ski"},
    {"sky", "ski"}
  };

  private static final Pattern VOWEL = Pattern.compile("[aeiou]");
  private static final int SHORTEST_STEM = 4;
  private static final int SHORTEST_WITH_UMLAUT = 4;

  /**
   * Undoes what Germans and Scandinavians write where a form knows no umlauts, but not at the end
   * of a word, where other languages have such letters: Joe, Sue, Mae.
   */
  static String withoutUmlauts(String text) {
    if (text.length() < SHORTEST_WITH_UMLAUT || !hasUmlaut(text)) {
      return text;
    }
    int last = text.length() - 1;
    return replaced(text.substring(0, last), UMLAUTS) + text.charAt(last);
  }

  /** Whether any of them may be in it: most words have none. */
  private static boolean hasUmlaut(String text) {
    for (int i = 1; i < text.length() - 1; i++) {
      char c = text.charAt(i);
      if ((c == 'e' || c == 'a') && "aou".indexOf(text.charAt(i - 1)) >= 0) {
        return true;
      }
    }
    return false;
  }

  /** How a word sounds, without regard to the language in whose letters it stands. */
  static String sound(String key) {
    String whole = ending(key, ENDS, 0);
    String sounds = replaced(whole, SOUNDS).replace('c', 'k');
    return once(withoutSilentH(sounds));
  }

  /** The sound of the man's form of a family name. */
  static String stem(String key) {
    return sound(ending(key, WOMEN_S, SHORTEST_STEM));
  }

  /** The first letter's sound and the consonants behind it. */
  static String consonants(String key) {
    String sound = sound(key);
    return sound.isEmpty()
        ? ""
        : sound.charAt(0) + VOWEL.matcher(sound.substring(1)).replaceAll("");
  }

  private static String replaced(String text, String[][] rules) {
    String changed = text;
    for (String[] rule : rules) {
      changed = changed.replace(rule[0], rule[1]);
    }
    return changed;
  }

  private static String ending(String word, String[][] rules, int shortest) {
    for (String[] rule : rules) {
      if (word.endsWith(rule[0]) && word.length() - rule[0].length() >= shortest) {
        return word.substring(0, word.length() - rule[0].length()) + rule[1];
      }
    }
    return word;
  }

  private static String withoutSilentH(String sounds) {
    return sounds.isEmpty() ? "" : sounds.charAt(0) + sounds.substring(1).replace("h", "");
  }

  private static String once(String sounds) {
    StringBuilder once = new StringBuilder(sounds.length());
    for (int i = 0; i < sounds.length(); i++) {
      if (i == 0 || sounds.charAt(i) != sounds.charAt(i - 1)) {
        once.append(sounds.charAt(i));
      }
    }
    return once.toString();
  }
}
