package withers.matching;

import java.util.Locale;

/** How a trait of two contacts compares. Which trait can have which level, {@link Trait} says. */
public enum Level {
  /** The same, however it is written. */
  EXACT(true),
  /** The same mobile: a person's own. */
  MOBILE(true),
  /** The same landline: a household's. */
  LANDLINE(true),
  /** Another form of one name: a short form, another language's spelling, a woman's ending. */
  FORM(true),
  /** A slip apart. */
  CLOSE(true),
  /** Sounds alike. */
  SOUND(true),
  /** One of them is an initial, which fits. */
  INITIAL(true),
  /** A part is the same, another part is missing or another one. */
  PARTLY(true),
  /** Only the town or the postcode is stated by one of them, and it is the same. */
  TOWN(true),
  /** The same street or building, another door. */
  NEAR(false),
  /** A landline here, a mobile there. */
  OTHER_KIND(false),
  DIFFERENT(false),
  /** One of them does not state it. */
  MISSING(false);

  private final boolean agreement;

  Level(boolean agreement) {
    this.agreement = agreement;
  }

  /** Whether it speaks for one person. */
  public boolean isAgreement() {
    return agreement;
  }

  /** Whether both state something else. */
  public boolean isOther() {
    return !agreement && this != MISSING;
  }

  /** The level's stable name, as in docs and parameter files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
