package withers.chip;

import java.nio.charset.StandardCharsets;

/**
 * The number that a chip carries, packed into a long: the kind in the top bits, the number below.
 *
 * <p>Three kinds exist (see {@link Kind}). An ISO number is a code of a country or manufacturer and
 * a national code of 38 bits (ISO 11784); it packs into the low 48 bits exactly as they stand in
 * the standard's 64-bit word. Whether a code is assigned, withdrawn or the test code is not asked
 * here but by {@link ChipNumberReader}.
 *
 * <p>The natural order is by kind, then by number, and equals the order of {@link #packed()}, which
 * is never negative.
 *
 * @param packed the packed form, as given by {@link #packed()} of another number
 */
public record ChipNumber(long packed) implements Comparable<ChipNumber> {

  /** The largest code that three digits can show. */
  static final int LARGEST_CODE = 999;

  /** The largest national code: 38 bits, all ones (ISO 11784). */
  public static final long LARGEST_NATIONAL_CODE = (1L << 38) - 1;

  /** One more than twelve digits of national code can show. */
  static final long NATIONAL_DECIMALS = 1_000_000_000_000L;

  private static final int NATIONAL_BITS = 38;
  private static final int KIND_SHIFT = 60;
  private static final long NUMBER_MASK = (1L << KIND_SHIFT) - 1;
  private static final long NINE_DIGIT_LIMIT = 1_000_000_000L;
  private static final int TEN = 10;
  private static final int RADIX = 36;
  private static final long TEN_CHARACTER_LIMIT = 3_656_158_440_062_976L; // 36 to the power of 10
  private static final String SIGNS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

  /** The kinds of number in their natural order. */
  public enum Kind {
    /** Fifteen digits: code and national code of ISO 11784. */
    ISO(0, 10, 15),
    /** Nine decimal digits, from before the standard. */
    NINE_DIGIT(1, 10, 9),
    /** Ten digits or letters, in practice often hexadecimal, from before the standard. */
    TEN_CHARACTER(2, RADIX, TEN);

    /** The top bits of a packed number: stored for good, so written out and never an ordinal. */
    final int prefix;

    final int radix;
    final int width;

    Kind(int prefix, int radix, int width) {
      this.prefix = prefix;
      this.radix = radix;
      this.width = width;
    }
  }

  /**
   * Takes a packed number back.
   *
   * @throws IllegalArgumentException if no number packs into this value
   */
  public ChipNumber {
    if (!wellFormed(packed)) {
      throw new IllegalArgumentException(
          "Expected a packed chip number, but found 0x" + Long.toHexString(packed));
    }
  }

  /**
   * Takes a packed number back; the same as the constructor.
   *
   * @throws IllegalArgumentException if no number packs into this value
   */
  public static ChipNumber ofPacked(long packed) {
    return new ChipNumber(packed);
  }

  /**
   * An ISO number.
   *
   * @param code country or manufacturer code, 1 to 999
   * @param nationalCode 0 to {@link #LARGEST_NATIONAL_CODE}
   * @throws IllegalArgumentException if either is out of range
   */
  public static ChipNumber iso(int code, long nationalCode) {
    requireRange("a country or manufacturer code", code, 1, LARGEST_CODE);
    requireRange("a national code", nationalCode, 0, LARGEST_NATIONAL_CODE);
    return new ChipNumber((long) code << NATIONAL_BITS | nationalCode);
  }

  /**
   * A number of nine decimal digits.
   *
   * @param number 0 to 999999999; leading zeros are part of the number and shown
   * @throws IllegalArgumentException if it is out of range
   */
  public static ChipNumber nineDigit(int number) {
    requireRange("a nine-digit number", number, 0, NINE_DIGIT_LIMIT - 1);
    return new ChipNumber(packValue(Kind.NINE_DIGIT, number));
  }

  /**
   * A number of ten characters, each a digit or a letter from A to Z. Lower case is raised; ten
   * digits are kept as they are.
   *
   * @throws IllegalArgumentException if the text has another length or other characters
   */
  public static ChipNumber tenCharacter(String text) {
    if (text.length() != TEN
        || !text.chars().allMatch(c -> Ascii.isDigit(c) || Ascii.isLetter(c))) {
      throw new IllegalArgumentException(
          "Expected ten digits or letters from A to Z, but found '" + text + "'");
    }
    return new ChipNumber(packValue(Kind.TEN_CHARACTER, Long.parseLong(text, RADIX)));
  }

  /**
   * Takes the exact display form back, as storage writes it: fifteen digits, nine digits, or ten
   * digits and capital letters. For what people and files write use {@link ChipNumberReader}.
   *
   * @throws IllegalArgumentException if the text is not a display form
   */
  public static ChipNumber parse(String display) {
    return switch (display.length()) {
      case 15 -> parseIso(display);
      case 9 -> nineDigit((int) digits(display, 0, 9));
      case TEN -> parseTenCharacter(display);
      default -> throw notADisplayForm(display);
    };
  }

  private static ChipNumber parseIso(String display) {
    return iso((int) digits(display, 0, 3), digits(display, 3, 15));
  }

  private static ChipNumber parseTenCharacter(String display) {
    if (!Ascii.isDigitsAndCapitals(display)) {
      throw notADisplayForm(display);
    }
    return tenCharacter(display);
  }

  private static long digits(String display, int from, int to) {
    long value = 0;
    for (int i = from; i < to; i++) {
      char c = display.charAt(i);
      if (c < '0' || c > '9') {
        throw notADisplayForm(display);
      }
      value = value * 10 + (c - '0');
    }
    return value;
  }

  private static IllegalArgumentException notADisplayForm(String display) {
    return new IllegalArgumentException(
        "Expected a chip number of 15 digits, 9 digits or 10 digits and capital letters, but found"
            + " '"
            + display
            + "'");
  }

  /** The kind of number. */
  public Kind kind() {
    return switch ((int) (packed >>> KIND_SHIFT)) {
      case 0 -> Kind.ISO;
      case 1 -> Kind.NINE_DIGIT;
      default -> Kind.TEN_CHARACTER;
    };
  }

  /**
   * Country or manufacturer code of an ISO number, 1 to 999.
   *
   * @throws IllegalStateException if this is not an ISO number
   */
  public int code() {
    requireIso();
    return (int) (packed >>> NATIONAL_BITS);
  }

  /**
   * National code of an ISO number, 0 to {@link #LARGEST_NATIONAL_CODE}.
   *
   * @throws IllegalStateException if this is not an ISO number
   */
  public long nationalCode() {
    requireIso();
    return packed & LARGEST_NATIONAL_CODE;
  }

  /** Fifteen digits, nine digits, or ten digits and capital letters, with their leading zeros. */
  public String display() {
    int radix = kind().radix;
    byte[] ascii = new byte[kind().width];
    long rest = value();
    for (int i = ascii.length - 1; i >= 0; i--) {
      ascii[i] = (byte) SIGNS.charAt((int) (rest % radix));
      rest /= radix;
    }
    return new String(ascii, StandardCharsets.ISO_8859_1);
  }

  /** The value that the display form writes in the kind's radix. */
  long value() {
    return kind() == Kind.ISO ? code() * NATIONAL_DECIMALS + nationalCode() : packed & NUMBER_MASK;
  }

  /** The display form. */
  @Override
  public String toString() {
    return display();
  }

  @Override
  public int compareTo(ChipNumber other) {
    return Long.compare(packed, other.packed);
  }

  /** Whether a number of this kind has this {@link #value()}. */
  static boolean isValue(Kind kind, long value) {
    return wellFormed(packValue(kind, value));
  }

  /** The packed form of the number with this {@link #value()}. */
  static long packValue(Kind kind, long value) {
    if (kind != Kind.ISO) {
      return (long) kind.prefix << KIND_SHIFT | value;
    }
    long nationalCode = value % NATIONAL_DECIMALS;
    return nationalCode > LARGEST_NATIONAL_CODE
        ? -1
        : value / NATIONAL_DECIMALS << NATIONAL_BITS | nationalCode;
  }

  private void requireIso() {
    if (kind() != Kind.ISO) {
      throw new IllegalStateException("Expected an ISO number, but found " + display());
    }
  }

  private static boolean wellFormed(long packed) {
    long number = packed & NUMBER_MASK;
    return switch ((int) (packed >>> KIND_SHIFT)) {
      case 0 -> number >>> NATIONAL_BITS >= 1 && number >>> NATIONAL_BITS <= LARGEST_CODE;
      case 1 -> number < NINE_DIGIT_LIMIT;
      case 2 -> number < TEN_CHARACTER_LIMIT;
      default -> false;
    };
  }

  private static void requireRange(String what, long found, long least, long most) {
    if (found < least || found > most) {
      throw new IllegalArgumentException(
          "Expected " + what + " from " + least + " to " + most + ", but found " + found);
    }
  }
}
