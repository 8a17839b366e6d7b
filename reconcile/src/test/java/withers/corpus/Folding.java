package withers.corpus;

import java.text.Normalizer;

/** Letters without their accents, as on forms that know only A to Z. */
final class Folding {
  private static final String SPECIAL = "øØłŁđĐðÐþÞßæÆœŒı";
  private static final String[] PLAIN = {
    "o", "O", "l", "L", "d", "D", "d", "D", "th", "Th", "ss", "ae", "Ae", "oe", "Oe", "i"
  };

  private Folding() {}

  static String withoutAccents(String text) {
    StringBuilder plain = new StringBuilder();
    for (char c : Normalizer.normalize(text, Normalizer.Form.NFD).toCharArray()) {
      int special = SPECIAL.indexOf(c);
      if (special >= 0) {
        plain.append(PLAIN[special]);
      } else if (c < 0x300 || c > 0x36f) {
        plain.append(c);
      }
    }
    return Normalizer.normalize(plain, Normalizer.Form.NFC);
  }
}
