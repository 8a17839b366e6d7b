package withers.chip;

/**
 * A run of numbers of one kind, both ends included.
 *
 * @param first lowest number
 * @param last highest number, of the same kind and not below the first
 */
public record NumberRange(ChipNumber first, ChipNumber last) {
  public NumberRange {
    if (first.kind() != last.kind() || first.compareTo(last) > 0) {
      throw new IllegalArgumentException(
          "Expected a range whose last number follows its first, but found "
              + first
              + " to "
              + last);
    }
  }

  public boolean contains(ChipNumber number) {
    return first.compareTo(number) <= 0 && number.compareTo(last) <= 0;
  }
}
