package withers.chip;

/** Why a text is no chip number. */
public enum RefusalReason {
  /** Digits, but not as many as any kind of number has. */
  WRONG_LENGTH,
  /** The last twelve digits exceed 274877906943: mistyped, or no chip number at all. */
  NATIONAL_CODE_BEYOND_38_BITS,
  /** A code that is neither a country's nor a manufacturer's: 000 to 003, 895 to 899, above 999. */
  INVALID_COUNTRY_CODE,
  /** Three letters before twelve digits that are no country's letters in ISO 3166-1. */
  UNKNOWN_COUNTRY_LETTERS,
  /** Code 999, which the standard keeps for tests, where test numbers are not accepted. */
  TEST_CODE,
  /** Sixteen hexadecimal digits that are an animal's ISO word in neither bit order. */
  IMPLAUSIBLE_ISO_WORD,
  /** Other text. */
  NOT_A_NUMBER,
  /** More text than any spelling of a number needs. */
  TOO_LONG
}
