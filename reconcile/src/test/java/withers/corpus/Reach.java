package withers.corpus;

import java.util.Locale;

/** How far two records reach for telling who they are. */
public enum Reach {
  /** There is enough left to tell whether they are one person. */
  CLEAR,
  /** Both names are in common and no detail is: it depends on how common the name is. */
  NAME_ALONE,
  /** What is left looks like the opposite of the truth, or like anything. */
  UNDECIDABLE;

  String words() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
