package withers.fact;

/** What a registry answered when it was asked about a number. */
public enum LookUpAnswer {
  REGISTERED,
  NOT_REGISTERED,
  REGISTERED_ELSEWHERE
}
