package withers.ingest.sniff;

import java.util.List;
import java.util.Locale;

/** Whether cells can be the names of columns. */
final class HeaderCells {

  private HeaderCells() {}

  /** At least two filled cells, each with a letter, few digits and no second of its name. */
  static boolean are(List<String> cells) {
    List<String> filled = cells.stream().map(String::strip).filter(c -> !c.isEmpty()).toList();
    return filled.size() > 1
        && filled.size() * 2 > cells.size()
        && filled.stream().allMatch(HeaderCells::isName)
        && filled.stream().map(c -> c.toLowerCase(Locale.ROOT)).distinct().count() * 2
            > filled.size();
  }

  private static boolean isName(String cell) {
    long digits = cell.chars().filter(Character::isDigit).count();
    return cell.chars().anyMatch(Character::isLetter) && digits <= 2 && !cell.contains("@");
  }
}
