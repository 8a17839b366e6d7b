package withers.report.list;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.chip.ChipNumber;

/**
 * One animal, or one record of it, to follow up, in words that are ready to be shown.
 *
 * @param reference short name to quote
 * @param animal the animal's name and kind
 * @param written a damaged number as the reader's record has it
 * @param record the reader's own record key, if it has one
 * @param wrong what is wrong, in a sentence or two
 * @param soFar what became of it so far, a sentence each
 * @param calls whom to call, the first one first; possibly nobody
 * @param steps what to do, in order
 * @param evidence what it rests on, in order of day
 * @param comparisons how registered contacts compare with whoever has the animal
 * @param cautions what to take care of with this animal; those of its kind stand with the task
 * @param newest the newest day that its records speak of, if any does
 */
public record FollowUp(
    String reference,
    Mark mark,
    String animal,
    List<ChipNumber> chips,
    Optional<String> written,
    Optional<String> record,
    String wrong,
    List<String> soFar,
    List<Callee> calls,
    List<String> steps,
    List<String> evidence,
    List<Comparing> comparisons,
    List<String> cautions,
    Optional<LocalDate> newest) {
  public FollowUp {
    chips = List.copyOf(chips);
    soFar = List.copyOf(soFar);
    calls = List.copyOf(calls);
    steps = List.copyOf(steps);
    evidence = List.copyOf(evidence);
    comparisons = List.copyOf(comparisons);
    cautions = List.copyOf(cautions);
  }

  /** The name of whom to call first; empty when nobody is to be called. */
  public String firstCall() {
    return calls.stream().findFirst().map(Callee::name).orElse("");
  }

  /** The newest day as ISO 8601 has it; empty without one. */
  public String newestDay() {
    return newest.map(LocalDate::toString).orElse("");
  }
}
