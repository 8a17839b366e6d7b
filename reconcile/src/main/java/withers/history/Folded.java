package withers.history;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.fact.Fact;

/**
 * What is in effect of all that was said about one subject.
 *
 * @param kept statements in effect, in the order of record, slot and export date
 * @param turned the latest export date at which something was withdrawn, or a registry's record
 *     went off the list or came back; empty when nothing ever was
 * @param lasting whether it stays so on later days, and whatever sources export, until something
 *     new is said of the subject itself
 */
public record Folded(List<Kept> kept, Optional<LocalDate> turned, boolean lasting) {

  /** A statement in effect, and whether its record is still listed. */
  public record Kept(Stated stated, boolean listed) {}

  public Folded {
    kept = List.copyOf(kept);
  }

  /** The chips that the same animal carries, by these statements. */
  public Stream<ChipNumber> pairedWith() {
    return kept.stream()
        .map(one -> one.stated().fact())
        .filter(Fact.PairedWith.class::isInstance)
        .map(fact -> ((Fact.PairedWith) fact).other());
  }
}
