package withers.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import withers.matching.Level;
import withers.matching.Weighing;

/**
 * A weighing as lines: what is known before anything is compared, and how each trait lifts or
 * lowers it. Each line begins with where that leaves it, in bits.
 */
final class Waterfall {
  private static final int PERCENT = 100;

  private Waterfall() {}

  static List<String> lines(Weighing weighing) {
    List<String> lines = new ArrayList<>();
    double level = weighing.prior();
    lines.add("%s before anything is compared".formatted(bits(level)));
    for (Weighing.Weighed one : weighing.traits()) {
      level += one.weight();
      lines.add(
          "%s after %s: %s (%s)"
              .formatted(
                  bits(level),
                  one.trait().word().replace('-', ' '),
                  words(one.level()),
                  bits(one.weight())));
    }
    lines.add(
        "one person %s, two of one household %s: %s"
            .formatted(
                percent(weighing.samePerson()),
                percent(weighing.sameHousehold()),
                weighing.ground().words()));
    return lines;
  }

  private static String words(Level level) {
    return switch (level) {
      case EXACT -> "the same";
      case MOBILE -> "the same mobile";
      case LANDLINE -> "the same landline";
      case FORM -> "forms of one name";
      case CLOSE -> "a slip apart";
      case SOUND -> "sounds alike";
      case INITIAL -> "an initial that fits";
      case PARTLY -> "the same in part";
      case TOWN -> "the same town";
      case NEAR -> "the same street, another door";
      case OTHER_KIND -> "a landline and a mobile";
      case DIFFERENT -> "another";
      case MISSING -> "not stated by both";
    };
  }

  private static String bits(double weight) {
    return String.format(Locale.ROOT, "%+.1f", weight);
  }

  private static String percent(double probability) {
    return String.format(Locale.ROOT, "%.1f %%", probability * PERCENT);
  }
}
