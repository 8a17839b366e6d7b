package withers.run;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import withers.chip.ChipNumber;
import withers.chip.LostDigits;
import withers.damage.CutNumbers;
import withers.history.Animal;
import withers.history.History;
import withers.history.Sources;
import withers.log.LogSnapshot;
import withers.settled.Settlements;

/**
 * Reads one animal from the log: the partitions of its chips, what is unplaced, and nothing else. A
 * pairing that is stated about the other chip only is not seen. Of a number that lost digits it
 * reads what is said of that number.
 */
public final class AnimalReader {
  private final PartitionReader reader;
  private final CutNumbers cutNumbers;
  private final LogSnapshot log;
  private final Sources sources;

  /** Reads what sources say, and leaves nothing out. */
  public AnimalReader(LogSnapshot log, Sources sources) {
    this(log, sources, Settlements.NONE);
  }

  /**
   * @param settlements tells which records have a number by mistake
   */
  public AnimalReader(LogSnapshot log, Sources sources, Settlements settlements) {
    this.reader = new PartitionReader(log, sources, settlements);
    this.cutNumbers = new CutNumbers(sources);
    this.log = log;
    this.sources = sources;
  }

  /** The animal that carries this chip; one without statements when nothing is known. */
  public Animal read(ChipNumber chip) {
    if (isCut(chip)) {
      return Animal.of(reader.histories(Set.of(chip)));
    }
    Unplaced unplaced = Unplaced.read(log, sources);
    Map<ChipNumber, History> histories = new HashMap<>();
    fetch(Set.of(chip), histories);
    fetch(unplaced.rivals(histories.keySet()), histories);
    Deferred deferred = new Deferred(List.copyOf(histories.values()), this::isCut);
    deferred.place(unplaced);
    deferred.fetch(reader.histories(deferred.missing()));
    return animalOf(chip, deferred.animals());
  }

  /** Fetches chips, and those that they are paired with, and so on. */
  private void fetch(Collection<ChipNumber> chips, Map<ChipNumber, History> histories) {
    Set<ChipNumber> wanted = new HashSet<>(chips);
    while (!wanted.isEmpty()) {
      List<History> found = reader.histories(wanted);
      found.forEach(history -> histories.put(history.chip(), history));
      wanted =
          found.stream()
              .flatMap(History::pairedWith)
              .filter(other -> !histories.containsKey(other) && !isCut(other))
              .collect(Collectors.toSet());
    }
  }

  /** Whether the number lost digits: what is said of it is said of several animals, or of none. */
  public boolean isCut(ChipNumber chip) {
    return LostDigits.endsInZeros(chip)
        && reader.histories(Set.of(chip)).stream().allMatch(cutNumbers::isCut);
  }

  private static Animal animalOf(ChipNumber chip, List<Animal> animals) {
    return animals.stream()
        .filter(animal -> animal.chips().contains(chip))
        .findFirst()
        .orElseThrow();
  }
}
