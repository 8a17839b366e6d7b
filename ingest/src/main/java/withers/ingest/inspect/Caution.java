package withers.ingest.inspect;

import java.util.List;

/**
 * How much better than the next best something must fit to be taken without asking, in bits. The
 * figures are our judgement, held to a large number of renamed exports by a test.
 *
 * @param isWordless whether most headers say nothing that our list knows, so that cells alone speak
 */
record Caution(boolean isWordless) {

  static final double SURE_FIELD = 3;

  private static final double SURE_KIND = 5;

  /** Where a mistake would put a number, a day or a person in the wrong place. */
  private static final double SURE_PRECIOUS = 4;

  /** Where the header names it and it could be nothing else. */
  private static final double SURE_OF_HEADER = 1;

  /** Where only the cells speak for it and it could be nothing else. */
  private static final double SURE_OF_CELLS = 2;

  private static final double WORDLESS = 6;
  private static final double FEWEST_KNOWN = 0.6;

  static Caution of(List<Column> columns) {
    long known = columns.stream().filter(column -> !column.meaning().concepts().isEmpty()).count();
    return new Caution(known < FEWEST_KNOWN * columns.size());
  }

  double sureKind() {
    return isWordless ? WORDLESS * SURE_KIND : SURE_KIND;
  }

  /** What is enough to take this candidate, where another assignment is the next best. */
  double enough(Candidate candidate, Search.Found other) {
    if (isWordless && !isTold(candidate.field().use())) {
      return Double.POSITIVE_INFINITY; // names look alike, an animal's and anybody's
    }
    if (isWordless) {
      return WORDLESS * (candidate.field().isPrecious() ? SURE_PRECIOUS : SURE_FIELD);
    }
    boolean elsewhere =
        other.of(candidate.field()).isPresent() || other.of(candidate.column()).isPresent();
    if (!elsewhere) {
      return candidate.header() > 2 ? SURE_OF_HEADER : SURE_OF_CELLS;
    }
    return candidate.field().isPrecious() ? SURE_PRECIOUS : SURE_FIELD;
  }

  /** Whether cells alone can tell. */
  private static boolean isTold(Use use) {
    return use == Use.CHIP || use == Use.DAY;
  }
}
