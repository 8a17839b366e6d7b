package withers.settling;

/** What a person can say of a follow-up. */
public enum Answer {
  RIGHT_AS_IT_IS,
  SAME_PERSON,
  SAME_HOUSEHOLD,
  DIFFERENT_PEOPLE,
  ONE_ANIMAL,
  MISTAKEN_NUMBER
}
