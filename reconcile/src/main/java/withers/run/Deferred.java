package withers.run;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import withers.chip.ChipNumber;
import withers.history.Animal;
import withers.history.History;

/** Phase 2: the chips that can't be judged from one partition, put together to animals. */
final class Deferred {
  private final Map<ChipNumber, History> own = new HashMap<>();
  private final Map<ChipNumber, List<History>> placed = new HashMap<>();
  private final Components components = new Components();
  private final Predicate<ChipNumber> isCut;

  /**
   * @param isCut whether a number lost digits, so that a pairing with it means nothing
   */
  Deferred(Collection<History> histories, Predicate<ChipNumber> isCut) {
    this.isCut = isCut;
    histories.forEach(this::add);
  }

  private void add(History history) {
    own.put(history.chip(), history);
    join(history);
  }

  private void join(History history) {
    components.add(history.chip());
    history
        .pairedWith()
        .filter(isCut.negate())
        .forEach(other -> components.join(history.chip(), other));
  }

  /** Puts what is unplaced where it belongs, and tells where that is. */
  Placement place(Unplaced unplaced) {
    Placement placement = new Placement(Map.copyOf(own), components);
    for (History history : placement.placed(unplaced)) {
      placed.computeIfAbsent(history.chip(), chip -> new ArrayList<>()).add(history);
      join(history);
    }
    return placement;
  }

  /** Chips that belong to an animal here though their own statements don't say so. */
  Set<ChipNumber> missing() {
    return components.chips().stream()
        .filter(chip -> !own.containsKey(chip))
        .collect(Collectors.toSet());
  }

  /** Adds histories of chips that were missing. */
  void fetch(Collection<History> histories) {
    histories.forEach(history -> own.put(history.chip(), history));
  }

  List<Animal> animals() {
    return components.animals().stream().map(this::animal).toList();
  }

  private Animal animal(List<ChipNumber> chips) {
    List<History> histories = new ArrayList<>();
    for (ChipNumber chip : chips) {
      histories.add(own.get(chip));
      histories.addAll(placed.getOrDefault(chip, List.of()));
    }
    return Animal.of(histories);
  }
}
