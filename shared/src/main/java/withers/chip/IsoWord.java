package withers.chip;

import java.util.HexFormat;
import java.util.Optional;

/**
 * The 64-bit word of ISO 11784 that a chip sends, in the order in which the standard numbers its
 * bits: bit 1, the animal flag, is the most significant.
 *
 * @param bits the word; any value is one, though not every one is an animal's
 */
public record IsoWord(long bits) {

  private static final long ANIMAL = 1L << 63;
  private static final int CODE_SHIFT = 38;
  private static final int CODE_MASK = 0x3FF;

  /** The word of an animal's ISO number with every other bit clear. */
  public static IsoWord of(ChipNumber number) {
    return new IsoWord(ANIMAL | (long) number.code() << CODE_SHIFT | number.nationalCode());
  }

  /** The word from the bits as they arrive in a reader, the least significant first. */
  public static IsoWord ofReceived(long received) {
    return new IsoWord(Long.reverse(received));
  }

  /** The word as it arrives in a reader: all 64 bits in reverse. */
  public long received() {
    return Long.reverse(bits);
  }

  /** Bit 1: whether the chip is an animal's. */
  public boolean isAnimal() {
    return bits < 0;
  }

  /** Bits 2 to 4: how often the animal was tagged anew under the same number, 0 to 7. */
  public int retaggingCounter() {
    return field(60, 0x7);
  }

  /** Bits 5 to 9: user information, 0 to 31. */
  public int userInformation() {
    return field(55, 0x1F);
  }

  /** Bits 10 to 14: reserved, 0 as long as nothing is defined for them. */
  public int reserved() {
    return field(50, 0x1F);
  }

  /** Bit 15: whether this is an advanced transponder (a later addition to the standard). */
  public boolean isAdvancedTransponder() {
    return field(49, 1) == 1;
  }

  /** Bit 16: whether additional data follow the word. */
  public boolean hasAdditionalData() {
    return field(48, 1) == 1;
  }

  /** Bits 17 to 26: country or manufacturer code, 0 to 1023; three digits show no more than 999. */
  public int code() {
    return field(CODE_SHIFT, CODE_MASK);
  }

  /** Bits 27 to 64: national code. */
  public long nationalCode() {
    return bits & ChipNumber.LARGEST_NATIONAL_CODE;
  }

  /** The number in the word; empty if its code is 0 or above 999. */
  public Optional<ChipNumber> number() {
    int code = code();
    return code == 0 || code > ChipNumber.LARGEST_CODE
        ? Optional.empty()
        : Optional.of(ChipNumber.iso(code, nationalCode()));
  }

  /**
   * The checksum that an FDX-B or HDX chip sends after the word (ISO 11785): CRC-16/KERMIT over its
   * eight bytes, the least significant first.
   *
   * @return 0 to 0xFFFF
   */
  public int crc() {
    return Crc16Kermit.ofLittleEndian(bits);
  }

  /** Sixteen hexadecimal digits in standard order. */
  public String hexadecimal() {
    return HexFormat.of().withUpperCase().toHexDigits(bits);
  }

  /** Sixteen hexadecimal digits as received. */
  public String receivedHexadecimal() {
    return HexFormat.of().withUpperCase().toHexDigits(received());
  }

  /** Three hexadecimal digits of code, a dot, ten of national code. */
  public String dottedHexadecimal() {
    HexFormat hex = HexFormat.of().withUpperCase();
    return hex.toHexDigits(code(), 3) + "." + hex.toHexDigits(nationalCode(), 10);
  }

  private int field(int shift, int mask) {
    return (int) (bits >>> shift) & mask;
  }
}
