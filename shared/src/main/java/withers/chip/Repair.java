package withers.chip;

/** How a candidate follows from the text that it is guessed from. */
public enum Repair {
  /** Zeros put back in front, as a spreadsheet drops them. */
  LEADING_ZEROS_RESTORED,
  /** Letter O read as 0. */
  LETTER_O_READ_AS_0,
  /** Letter I or L read as 1. */
  LETTER_I_OR_L_READ_AS_1,
  /** Letter S read as 5. */
  LETTER_S_READ_AS_5,
  /** Letter B read as 8. */
  LETTER_B_READ_AS_8,
  /** Different ones of these letters, each read as its digit. */
  SEVERAL_LETTERS_READ_AS_DIGITS,
  /** Nothing repaired: the letters may be meant as they stand. */
  LETTERS_AS_THEY_STAND,
  /** Scientific notation in which every digit survived, written out. */
  SCIENTIFIC_NOTATION_WRITTEN_OUT,
  /** One of several numbers in the same text. */
  ONE_OF_SEVERAL_NUMBERS,
  /** Decimal digits throughout, read as the hexadecimal ISO word. */
  DIGITS_READ_AS_HEXADECIMAL,
  /** The hexadecimal ISO word read most significant bit first. */
  WORD_IN_STANDARD_ORDER,
  /** The hexadecimal ISO word read least significant bit first, as a reader receives it. */
  WORD_AS_RECEIVED
}
