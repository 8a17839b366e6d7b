package withers.ingest.sniff;

import java.util.EnumMap;
import java.util.Map;

/** What ends a line. */
public enum LineEnd {
  LF,
  CR_LF,
  CR;

  /** How often each stands in a text, within quotes too; those that don't are left out. */
  public static Map<LineEnd, Integer> count(String text) {
    Map<LineEnd, Integer> counts = new EnumMap<>(LineEnd.class);
    for (int at = 0; at < text.length(); at += Math.max(1, lengthAt(text, at))) {
      if (lengthAt(text, at) > 0) {
        counts.merge(of(text, at), 1, Integer::sum);
      }
    }
    return counts;
  }

  private static LineEnd of(String text, int at) {
    if (text.charAt(at) == '\n') {
      return LF;
    }
    return lengthAt(text, at) == 2 ? CR_LF : CR;
  }

  /** How many characters the line end at a place has; 0 when none is there. */
  static int lengthAt(String text, int at) {
    char c = text.charAt(at);
    if (c == '\r' && at + 1 < text.length() && text.charAt(at + 1) == '\n') {
      return 2;
    }
    return c == '\n' || c == '\r' ? 1 : 0;
  }
}
