package withers.chip;

import java.util.Random;

/** Seeded texts, near to chip numbers and far from them. */
final class RandomTexts {

  private static final String NEAR =
      "0123456789012345678901234567890123456789ABCDEFOISBl.-* 'E+,/;";

  private RandomTexts() {}

  static String any(Random random) {
    return switch (random.nextInt(8)) {
      case 0 -> anyCodePoints(random, random.nextInt(40));
      case 1 -> anyChars(random, random.nextInt(40));
      case 2 -> near(random, random.nextInt(600));
      case 3, 4 -> damaged(random);
      default -> near(random, random.nextInt(36));
    };
  }

  private static String near(Random random, int length) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < length; i++) {
      text.append(NEAR.charAt(random.nextInt(NEAR.length())));
    }
    return text.toString();
  }

  private static String damaged(Random random) {
    ChipNumber number = RandomNumbers.anyKind(random);
    StringBuilder text = new StringBuilder(number.display());
    if (number.kind() == ChipNumber.Kind.ISO && random.nextBoolean()) {
      text = new StringBuilder(IsoWord.of(number).hexadecimal());
    }
    for (int i = random.nextInt(4); i > 0; i--) {
      text.setCharAt(random.nextInt(text.length()), NEAR.charAt(random.nextInt(NEAR.length())));
    }
    return text.toString();
  }

  private static String anyCodePoints(Random random, int length) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < length; i++) {
      text.appendCodePoint(random.nextInt(Character.MAX_CODE_POINT + 1));
    }
    return text.toString();
  }

  /** Halves of surrogate pairs among them. */
  private static String anyChars(Random random, int length) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < length; i++) {
      text.append((char) random.nextInt(Character.MAX_VALUE + 1));
    }
    return text.toString();
  }
}
