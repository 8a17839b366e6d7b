package withers.run;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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

  private final Map<ChipNumber, History> histories;
  private final Components components;
  private final Map<Unplaced.AnimalId, List<Statement>> links = new HashMap<>();

  /**
   * @param histories of every chip that something unplaced may belong to
   * @param components which chips are one animal's by what was said about numbers
   */
  Placement(Map<ChipNumber, History> histories, Components components) {
    this.histories = histories;
    this.components = components;
    histories.values().stream()
        .flatMap(history -> history.statements().stream())
        .filter(statement -> statement.fact() instanceof Fact.Linked)
        .forEach(this::index);
  }

  private void index(Statement link) {
    links.computeIfAbsent(Unplaced.linked(link), id -> new ArrayList<>()).add(link);
  }

  /** The histories that come to chips by placement. */
  List<History> placed(Unplaced unplaced) {
    Stream<History> animals =
        unplaced.animals().stream()
            .flatMap(one -> byLink(one.animal()).map(at -> placed(at, one.folded())).stream());
    Stream<History> damaged =
        unplaced.damaged().stream()
            .flatMap(one -> byCandidate(one).map(at -> placed(at, one.folded())).stream());
    return Stream.concat(animals, damaged).toList();
  }

  private static History placed(Place place, Folded folded) {
    return History.placed(place.chip, folded, place.since);
  }

  /** By links of the same source, when all that they name is one animal. */
  private Optional<Place> byLink(Unplaced.AnimalId animal) {
    List<Statement> named = links.getOrDefault(animal, List.of());
    long animals = named.stream().map(link -> components.root(link.chip())).distinct().count();
    return animals == 1 ? Optional.of(place(named)) : Optional.empty();
  }

  /** By the only candidate that another source speaks of. */
  private Optional<Place> byCandidate(Unplaced.OfDamaged damaged) {
    List<Place> known =
        damaged.number().candidates().stream()
            .flatMap(chip -> spokenOf(chip, damaged.source()).stream())
            .toList();
    return known.size() == 1 ? Optional.of(known.get(0)) : Optional.empty();
  }

  private Optional<Place> spokenOf(ChipNumber chip, SourceId but) {
    List<Statement> others =
        Optional.ofNullable(histories.get(chip)).stream()
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
