package withers.chip;

/** What stands in a cell that holds no number. */
public enum Placeholder {
  /** Nothing, or nothing but blanks. */
  BLANK,
  /** Marks only, such as a dash or a question mark. */
  MARKS,
  /** Zeros only. */
  ZEROS,
  /** Nines only. */
  NINES,
  /** One other digit repeated, as long as a chip number. */
  REPEATED_DIGIT,
  /** Digits counted up from 0 or 1, as long as a chip number. */
  COUNTED_UP,
  /** A word that says that there is no chip. */
  WORD_FOR_NONE,
  /** A word that says that the number, or whether there is a chip, is not known. */
  WORD_FOR_UNKNOWN,
  /** A word that says that chip or number will follow. */
  WORD_FOR_LATER
}
