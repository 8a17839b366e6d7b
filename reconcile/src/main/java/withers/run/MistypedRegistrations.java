package withers.run;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.history.Animal;
import withers.history.History;
import withers.registration.LiveRegistration;
import withers.rule.Assessment;
import withers.rule.Rules;
import withers.slip.Slip;

/**
 * Animals whose keeper is registered under a number one slip away, judged again with that known.
 * Only what may be one is read from the log a second time.
 */
record MistypedRegistrations(PartitionReader reader, Rules rules, Workers workers) {

  /** A registration that may be meant for an animal. */
  private record Meant(ChipNumber stray, Animal animal, LiveRegistration registration) {
    ChipNumber anchor() {
      return animal.anchor();
    }
  }

  /**
   * The new assessments, of animals for which one registration may be meant, and that one for no
   * other animal.
   *
   * @param joined animals that were put together from several partitions
   */
  List<Assessment> judge(Set<Slip> slips, Collection<Animal> joined) {
    Map<ChipNumber, Animal> animals = animals(slips, joined);
    List<Meant> all = slips.stream().flatMap(slip -> meant(slip, animals)).toList();
    Set<ChipNumber> doubtful = several(all, Meant::stray);
    doubtful.addAll(several(all, Meant::anchor));
    return all.stream()
        .filter(one -> !doubtful.contains(one.stray) && !doubtful.contains(one.anchor()))
        .map(one -> rules.assess(one.animal, one.registration))
        .toList();
  }

  private Stream<Meant> meant(Slip slip, Map<ChipNumber, Animal> animals) {
    Animal animal = Objects.requireNonNull(animals.get(slip.carried()));
    Animal stray = Objects.requireNonNull(animals.get(slip.stray()));
    return rules.meantFor(animal, stray, slip).stream()
        .map(registration -> new Meant(slip.stray(), animal, registration));
  }

  /** Numbers that come up more than once; a stray one is nobody's anchor. */
  private static Set<ChipNumber> several(List<Meant> all, Function<Meant, ChipNumber> of) {
    Set<ChipNumber> seen = new HashSet<>();
    return all.stream()
        .map(of)
        .filter(number -> !seen.add(number))
        .collect(Collectors.toCollection(HashSet::new));
  }

  /** The animals that carry these numbers. */
  private Map<ChipNumber, Animal> animals(Set<Slip> slips, Collection<Animal> joined) {
    Map<ChipNumber, Animal> animals = new HashMap<>();
    Set<ChipNumber> alone = new HashSet<>();
    slips.forEach(slip -> alone.addAll(List.of(slip.stray(), slip.carried())));
    for (Animal animal : alone.isEmpty() ? List.<Animal>of() : joined) {
      animal.chips().stream().filter(alone::remove).forEach(chip -> animals.put(chip, animal));
    }
    workers.map(reader.together(alone), reader::histories).stream()
        .flatMap(List::stream)
        .forEach(history -> animals.put(history.chip(), Animal.of(List.<History>of(history))));
    return animals;
  }
}
