package withers.oracle;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;

/**
 * A monthly round: the first two as {@code fixtures/demo/rounds.yaml} has them, the others made by
 * {@link Turmoil}.
 *
 * @param folder the folder of its exports
 * @param asOf the day that is judged
 */
record Month(String folder, LocalDate asOf) {

  static final Month SEPTEMBER = new Month("2026-09", LocalDate.of(2026, 9, 1));
  static final Month OCTOBER = new Month("2026-10", LocalDate.of(2026, 10, 1));
  static final Month NOVEMBER = new Month("2026-11", LocalDate.of(2026, 11, 1));
  static final Month DECEMBER = new Month("2026-12", LocalDate.of(2026, 12, 1));
  static final List<Month> ALL = List.of(SEPTEMBER, OCTOBER, NOVEMBER, DECEMBER);

  /** The folders of this month and of those before it. */
  List<Path> foldersUpToHere(Path world) {
    return ALL.subList(0, ALL.indexOf(this) + 1).stream()
        .map(month -> world.resolve(month.folder))
        .toList();
  }
}
