package withers.run;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import withers.chip.ChipNumber;

/** Which chips are one animal's: union-find, with the lowest number as the root. */
final class Components {
  private final Map<ChipNumber, ChipNumber> parents = new HashMap<>();

  void add(ChipNumber chip) {
    parents.putIfAbsent(chip, chip);
  }

  void join(ChipNumber one, ChipNumber other) {
    ChipNumber first = root(one);
    ChipNumber second = root(other);
    if (first.compareTo(second) < 0) {
      parents.put(second, first);
    } else {
      parents.put(first, second);
    }
  }

  /** The lowest chip of the animal, halving the way there. A chip that is new is alone. */
  ChipNumber root(ChipNumber chip) {
    add(chip);
    ChipNumber at = chip;
    while (!up(at).equals(at)) {
      parents.put(at, up(up(at)));
      at = up(at);
    }
    return at;
  }

  private ChipNumber up(ChipNumber chip) {
    return parents.getOrDefault(chip, chip);
  }

  /** All chips that were ever named. */
  Set<ChipNumber> chips() {
    return Set.copyOf(parents.keySet());
  }

  /** The chips, animal by animal, in the order of their anchors. */
  Collection<List<ChipNumber>> animals() {
    Map<ChipNumber, List<ChipNumber>> animals = new TreeMap<>();
    for (ChipNumber chip : chips()) {
      animals.computeIfAbsent(root(chip), root -> new ArrayList<>()).add(chip);
    }
    return animals.values();
  }
}
