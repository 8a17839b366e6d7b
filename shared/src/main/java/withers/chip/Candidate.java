package withers.chip;

/**
 * A number that a text may have been meant as.
 *
 * @param number the number, valid in itself
 * @param repair how it follows from the text
 */
public record Candidate(ChipNumber number, Repair repair) {}
