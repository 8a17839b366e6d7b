package withers.chip;

/**
 * CRC-16/KERMIT: polynomial 0x1021, reflected, initial value 0, no final exclusive or; its check
 * value over the nine characters 123456789 is 0x2189.
 */
final class Crc16Kermit {

  private static final int REFLECTED_POLYNOMIAL = 0x8408;

  private Crc16Kermit() {}

  static int of(byte[] bytes) {
    int crc = 0;
    for (byte next : bytes) {
      crc = step(crc, next);
    }
    return crc;
  }

  static int ofLittleEndian(long word) {
    int crc = 0;
    for (int shift = 0; shift < Long.SIZE; shift += Byte.SIZE) {
      crc = step(crc, (byte) (word >>> shift));
    }
    return crc;
  }

  private static int step(int crc, byte next) {
    int rest = crc ^ (next & 0xFF);
    for (int bit = 0; bit < Byte.SIZE; bit++) {
      rest = (rest & 1) == 0 ? rest >>> 1 : rest >>> 1 ^ REFLECTED_POLYNOMIAL;
    }
    return rest;
  }
}
