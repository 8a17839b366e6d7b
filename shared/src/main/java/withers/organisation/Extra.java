package withers.organisation;

/**
 * Kinds of findings that go to the overview only, because acting on them gains little, unless an
 * organisation wants them on its list. Their names are those of the kinds.
 */
public enum Extra {
  REGISTERED_ELSEWHERE,
  SCAN_OVERDUE,
  NON_ISO_ONLY,
  REGISTERED_AFTER_DEATH,
  STOCK_UNACCOUNTED
}
