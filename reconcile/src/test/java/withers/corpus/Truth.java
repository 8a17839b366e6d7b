package withers.corpus;

/** Who two contacts truly are. */
public enum Truth {
  SAME_PERSON,
  SAME_HOUSEHOLD,
  DIFFERENT
}
