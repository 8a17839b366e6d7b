package withers.run;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.fact.Fact;
import withers.history.Folded;
import withers.history.History;
import withers.history.Statement;
import withers.id.SourceId;

/** Puts unplaced statements on the chips that they belong to, if that can be told. */
final class Placement {

  private record Place(ChipNumber chip, LocalDate since) {}

  private final Function<ChipNumber, Optional<History>> histories;
  private final Components components;
  private final Map<Unplaced.AnimalId, List<Statement>> links = new HashMap<>();

  /**
   * @param all histories of every chip that something unplaced may belong to
   * @param histories the same by their chips
   * @param components which chips are one animal's by what was said about numbers
   */
  Placement(
      Collection<History> all,
      Function<ChipNumber, Optional<History>> histories,
      Components components) {
    this.histories = histories;
    this.components = components;
    all.stream()
        .flatMap(history -> history.statements().stream())
        .filter(statement -> statement.fact() instanceof Fact.Linked)
        .forEach(this::index);
  }

  private void index(Statement link) {
    links.computeIfAbsent(Unplaced.linked(link), id -> new ArrayList<>()).add(link);
  }

  /** The histories that come to chips by placement, or by its being in doubt. */
  List<History> placed(Unplaced unplaced) {
    Stream<History> animals =
        unplaced.animals().stream().flatMap(one -> histories(byLink(one.animal()), one.folded()));
    Stream<History> damaged =
        unplaced.damaged().stream().flatMap(one -> histories(byCandidate(one), one.folded()));
    return Stream.concat(animals, damaged).toList();
  }

  /**
   * With one place the statements are there. With several they are nowhere, and since the second
   * one came up that is a change for all of them: they may have had the statements before.
   */
  private static Stream<History> histories(List<Place> places, Folded folded) {
    if (places.size() < 2) {
      return places.stream().map(place -> History.placed(place.chip, folded, place.since));
    }
    if (folded.kept().isEmpty()) {
      return Stream.empty();
    }
    LocalDate inDoubt =
        places.stream().map(Place::since).sorted().skip(1).findFirst().orElseThrow();
    return places.stream().map(place -> History.turned(place.chip, inDoubt));
  }

  /** The number that a damaged one was placed on. */
  Optional<ChipNumber> placeOf(Unplaced.OfDamaged damaged) {
    List<Place> places = byCandidate(damaged);
    return places.size() == 1 ? Optional.of(places.get(0).chip) : Optional.empty();
  }

  /** By links of the same source: the animals that they name, each by its lowest chip. */
  private List<Place> byLink(Unplaced.AnimalId animal) {
    Map<ChipNumber, List<Statement>> named =
        links.getOrDefault(animal, List.of()).stream()
            .collect(Collectors.groupingBy(link -> components.root(link.chip())));
    return named.values().stream().map(Placement::place).toList();
  }

  /** By the candidates that another source speaks of. */
  private List<Place> byCandidate(Unplaced.OfDamaged damaged) {
    return damaged.number().candidates().stream()
        .flatMap(chip -> spokenOf(chip, damaged.source()).stream())
        .toList();
  }

  private Optional<Place> spokenOf(ChipNumber chip, SourceId but) {
    List<Statement> others =
        histories.apply(chip).stream()
            .flatMap(history -> history.statements().stream())
            .filter(statement -> !statement.source().equals(but))
            .toList();
    return others.isEmpty() ? Optional.empty() : Optional.of(place(others));
  }

  private static Place place(List<Statement> because) {
    return new Place(
        because.stream().map(Statement::chip).min(Comparator.naturalOrder()).orElseThrow(),
        because.stream().map(Statement::firstStated).min(Comparator.naturalOrder()).orElseThrow());
  }
}
