package withers.fact;

/** What kind of animal it is, as far as the records of the trade tell kinds apart. */
public enum Species {
  DOG,
  CAT,
  RABBIT,
  FERRET,
  HORSE,
  BIRD,
  OTHER,
  UNSTATED
}
