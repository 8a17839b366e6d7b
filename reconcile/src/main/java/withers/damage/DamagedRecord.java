package withers.damage;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.chip.LostDigits;
import withers.fact.Fact;
import withers.history.Stated;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * A record that is still listed and whose number is damaged.
 *
 * @param written the number as the record has it
 * @param readings what it may have been, when it has all its digits
 * @param lost what survives of it, when it has not
 * @param says what it states, in effect; at least one statement
 * @param place the number of the animal that it found all the same
 */
public record DamagedRecord(
    SourceId source,
    RecordKey key,
    String written,
    List<ChipNumber> readings,
    Optional<LostDigits> lost,
    List<Stated> says,
    Optional<ChipNumber> place) {

  private static final Comparator<Stated> FIRST =
      Comparator.comparing(Stated::exportDate).thenComparing(Stated::slot);

  /** Records of one key: the one to tell of comes first, that is one without a place. */
  static final Comparator<DamagedRecord> MOST_TELLING =
      Comparator.comparing((DamagedRecord record) -> record.place().isPresent())
          .thenComparing(DamagedRecord::written)
          .thenComparing(record -> record.readings().toString());

  public DamagedRecord {
    readings = List.copyOf(readings);
    says = List.copyOf(says);
  }

  /** Whether it tells of a death. */
  boolean isOfDead() {
    return says.stream().anyMatch(stated -> stated.fact() instanceof Fact.Died);
  }

  /** The numbers that the same animal carries, by this record. */
  Stream<ChipNumber> pairedWith() {
    return says.stream()
        .map(Stated::fact)
        .filter(Fact.PairedWith.class::isInstance)
        .map(fact -> ((Fact.PairedWith) fact).other());
  }

  /** The statement that had the number so first. */
  Stated first() {
    return says.stream().min(FIRST).orElseThrow();
  }

  /** What the animal is, by this record. */
  Optional<Fact.Described> described() {
    return says.stream()
        .map(Stated::fact)
        .filter(Fact.Described.class::isInstance)
        .map(Fact.Described.class::cast)
        .findFirst();
  }
}
