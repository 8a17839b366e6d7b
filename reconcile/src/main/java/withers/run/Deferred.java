package withers.run;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import withers.chip.ChipNumber;
import withers.history.Animal;
import withers.history.History;
import withers.packed.LazyList;

/** Phase 2: the chips that can't be judged from one partition, put together to animals. */
final class Deferred {
  private final List<History> histories;
  private final Map<ChipNumber, Integer> own = new HashMap<>();
  private final Map<ChipNumber, History> fetched = new HashMap<>();
  private final Map<ChipNumber, List<History>> placed = new HashMap<>();
  private final Components components = new Components();
  private final Predicate<ChipNumber> isCut;

  /**
   * @param histories each of another chip; may be made anew whenever one is asked for
   * @param isCut whether a number lost digits, so that a pairing with it means nothing
   */
  Deferred(List<History> histories, Predicate<ChipNumber> isCut) {
    this.histories = histories;
    this.isCut = isCut;
    histories.forEach(this::add);
  }

  private void add(History history) {
    own.put(history.chip(), own.size());
    join(history);
  }

  private Optional<History> own(ChipNumber chip) {
    return Optional.ofNullable(own.get(chip)).map(histories::get);
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
    Placement placement = new Placement(histories, this::own, components);
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
  void fetch(Collection<History> missing) {
    missing.forEach(history -> fetched.put(history.chip(), history));
  }

  /** All animals, each made whenever it is asked for. */
  List<Animal> animals() {
    List<List<ChipNumber>> animals = List.copyOf(components.animals());
    return LazyList.of(animals.size(), index -> animal(animals.get(index)));
  }

  private Animal animal(List<ChipNumber> chips) {
    List<History> all = new ArrayList<>();
    for (ChipNumber chip : chips) {
      all.add(own(chip).orElseGet(() -> Objects.requireNonNull(fetched.get(chip))));
      all.addAll(placed.getOrDefault(chip, List.of()));
    }
    return Animal.of(all);
  }
}
