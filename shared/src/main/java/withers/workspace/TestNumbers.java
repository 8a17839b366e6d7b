package withers.workspace;

/** What to do with numbers under the standard's test code, 999, which no real animal carries. */
public enum TestNumbers {
  REFUSED,
  ACCEPTED
}
