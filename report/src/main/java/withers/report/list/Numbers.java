package withers.report.list;

import java.util.List;
import java.util.stream.IntStream;
import withers.chip.ChipNumber;

/** Chip numbers as people read them out: in groups of three. */
public final class Numbers {
  private static final int SIZE = 3;
  private static final String NO_BREAK_SPACE = "\u00a0";

  private Numbers() {}

  /** The display form in groups from the left; a rest that makes no group joins the last one. */
  public static List<String> groups(ChipNumber number) {
    String display = number.display();
    int groups = display.length() / SIZE;
    return IntStream.range(0, groups)
        .mapToObj(i -> display.substring(i * SIZE, end(i, groups, display)))
        .toList();
  }

  private static int end(int group, int groups, String display) {
    return group + 1 == groups ? display.length() : (group + 1) * SIZE;
  }

  /** The number within a sentence: its groups with spaces at which no line breaks. */
  static String spoken(ChipNumber number) {
    return String.join(NO_BREAK_SPACE, groups(number));
  }
}
