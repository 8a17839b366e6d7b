package withers.report.list;

import java.util.List;
import withers.chip.ChipNumber;

/**
 * Something that the reader may be able to tell where the records can't, in words that are ready to
 * be shown: whether the registered contact is the person whom the reader's record names.
 *
 * @param reference short name to quote
 * @param animal the animal's name and kind
 * @param record the reader's own record key
 * @param about who may be whom, in a sentence or two
 * @param comparisons how the registered contacts compare with the other
 */
public record Question(
    String reference,
    String animal,
    List<ChipNumber> chips,
    String record,
    String about,
    List<Comparing> comparisons) {
  public Question {
    chips = List.copyOf(chips);
    comparisons = List.copyOf(comparisons);
  }
}
