package withers.matching;

import java.util.List;
import java.util.Locale;

/** What contacts are compared by, and the levels that each can have beside {@code MISSING}. */
public enum Trait {
  GIVEN_NAME(
      Level.EXACT,
      Level.FORM,
      Level.CLOSE,
      Level.SOUND,
      Level.INITIAL,
      Level.PARTLY,
      Level.DIFFERENT),
  FAMILY_NAME(
      Level.EXACT,
      Level.FORM,
      Level.CLOSE,
      Level.SOUND,
      Level.INITIAL,
      Level.PARTLY,
      Level.DIFFERENT),
  PHONE(
      Level.MOBILE,
      Level.EXACT,
      Level.LANDLINE,
      Level.PARTLY,
      Level.CLOSE,
      Level.OTHER_KIND,
      Level.DIFFERENT),
  EMAIL(Level.EXACT, Level.CLOSE, Level.PARTLY, Level.DIFFERENT),
  ADDRESS(Level.EXACT, Level.CLOSE, Level.PARTLY, Level.TOWN, Level.NEAR, Level.DIFFERENT);

  private final List<Level> levels;

  Trait(Level... levels) {
    this.levels = List.of(levels);
  }

  /** From the strongest to {@code DIFFERENT}. */
  public List<Level> levels() {
    return levels;
  }

  public boolean isName() {
    return this == GIVEN_NAME || this == FAMILY_NAME;
  }

  /** The trait's stable name, as in docs and parameter files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
