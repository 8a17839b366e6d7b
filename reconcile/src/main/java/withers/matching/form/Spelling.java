package withers.matching.form;

/** Spellings of one word made alike. */
final class Spelling {
  private Spelling() {}

  /** Undoes what Germans and Scandinavians write where a form knows no umlauts. */
  static String withoutUmlauts(String text) {
    return text.replace("ae", "a").replace("oe", "o").replace("ue", "u").replace("aa", "a");
  }

  /** How a word sounds, without regard to the language in whose letters it stands. */
  static String sound(String key) {
    return key.replace("sch", "s")
        .replace("sh", "s")
        .replace("sz", "s")
        .replace("tch", "c")
        .replace("ch", "c")
        .replace("cz", "c")
        .replace("ck", "k")
        .replace("ph", "f")
        .replace("th", "t")
        .replace('w', 'v')
        .replace('j', 'i')
        .replace('y', 'i')
        .replaceAll("(.)\\1", "$1");
  }
}
