package withers.chip;

import java.util.Random;

/** Seeded numbers of every kind. */
final class RandomNumbers {

  private RandomNumbers() {}

  static ChipNumber anyKind(Random random) {
    return switch (random.nextInt(4)) {
      case 0 -> ChipNumber.nineDigit(random.nextInt(1_000_000_000));
      case 1 -> tenCharacter(random);
      default -> iso(random, 1 + random.nextInt(999));
    };
  }

  static ChipNumber iso(Random random, int code) {
    return ChipNumber.iso(code, random.nextLong() & ChipNumber.LARGEST_NATIONAL_CODE);
  }

  private static ChipNumber tenCharacter(Random random) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < 10; i++) {
      text.append(Character.forDigit(random.nextInt(36), 36));
    }
    return ChipNumber.tenCharacter(text.toString());
  }
}
