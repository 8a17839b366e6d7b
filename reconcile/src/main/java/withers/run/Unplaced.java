package withers.run;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Subject;
import withers.history.Fold;
import withers.history.Folded;
import withers.history.History;
import withers.history.Sources;
import withers.history.Stated;
import withers.history.Statement;
import withers.id.SourceId;
import withers.log.LogSnapshot;

/**
 * The statements that have no number yet, folded, and the numbers that could take them. Filled
 * once, then only read.
 */
final class Unplaced {

  /** An animal by the id of one source. */
  record AnimalId(SourceId source, String id) {}

  /** What one source says about one animal of its own. */
  record OfAnimal(AnimalId animal, Folded folded) {}

  /** What one source says about a number that it damaged. */
  record OfDamaged(SourceId source, Subject.Damaged number, Folded folded) {

    /** The numbers that it may be, and those that the same animal carries by its record. */
    private Stream<ChipNumber> names() {
      return Stream.concat(number.candidates().stream(), folded.pairedWith());
    }
  }

  private record About(SourceId source, Subject subject) {}

  private final List<OfAnimal> animals = new ArrayList<>();
  private final List<OfDamaged> damaged = new ArrayList<>();
  private final Set<AnimalId> animalIds = new HashSet<>();
  private final Set<ChipNumber> named = new HashSet<>();

  private Unplaced() {}

  static Unplaced read(LogSnapshot log, Sources sources) {
    Map<About, List<Stated>> all = new HashMap<>();
    log.replay(
        Streams.UNPLACED,
        0,
        sources::hears,
        (event, marker) ->
            all.computeIfAbsent(about(event), a -> new ArrayList<>())
                .add(new Stated(event, marker)));
    Unplaced unplaced = new Unplaced();
    Fold fold = new Fold(sources);
    all.forEach((about, stated) -> unplaced.add(about, fold.fold(stated)));
    return unplaced;
  }

  private static About about(ChipEvent event) {
    return new About(event.origin().source(), event.subject());
  }

  private void add(About about, Folded folded) {
    if (folded.kept().isEmpty() && folded.turned().isEmpty()) {
      return;
    }
    if (about.subject instanceof Subject.Animal animal) {
      AnimalId id = new AnimalId(about.source, animal.animalId());
      animals.add(new OfAnimal(id, folded));
      animalIds.add(id);
    } else if (about.subject instanceof Subject.Damaged number) {
      add(new OfDamaged(about.source, number, folded));
    }
  }

  private void add(OfDamaged one) {
    damaged.add(one);
    one.names().forEach(named::add);
  }

  List<OfAnimal> animals() {
    return List.copyOf(animals);
  }

  List<OfDamaged> damaged() {
    return List.copyOf(damaged);
  }

  /** The animals' ids that the source of this chip links to it, among those that are unplaced. */
  private boolean isLinked(History history) {
    if (!animalIds.isEmpty()) {
      for (Statement statement : history.statements()) {
        if (statement.fact() instanceof Fact.Linked && links(statement)) {
          return true;
        }
      }
    }
    return false;
  }

  private boolean links(Statement statement) {
    return animalIds.contains(linked(statement));
  }

  /** The animal that a link names. */
  static AnimalId linked(Statement link) {
    return new AnimalId(link.source(), ((Fact.Linked) link.fact()).animalId());
  }

  /** Whether a statement links its number to an animal that is unplaced. */
  boolean isLink(ChipEvent event) {
    return !animalIds.isEmpty()
        && event.fact() instanceof Fact.Linked linked
        && animalIds.contains(new AnimalId(event.origin().source(), linked.animalId()));
  }

  /** The numbers to which something unplaced may belong. */
  Set<ChipNumber> named() {
    return Set.copyOf(named);
  }

  /** Whether something unplaced may belong to this chip. */
  boolean concerns(History history) {
    return named.contains(history.chip()) || isLinked(history);
  }

  /** What damaged numbers may be, those of which a statement is in effect. */
  Stream<ChipNumber> readings() {
    return damaged.stream()
        .filter(one -> !one.folded.kept().isEmpty())
        .flatMap(one -> one.number.candidates().stream());
  }

  /** The same of those of which all was taken back, with the date. */
  void readingsTakenBack(BiConsumer<ChipNumber, LocalDate> use) {
    damaged.stream()
        .filter(one -> one.folded.kept().isEmpty())
        .forEach(
            one ->
                one.folded
                    .turned()
                    .ifPresent(on -> one.number.candidates().forEach(c -> use.accept(c, on))));
  }

  /**
   * The other candidates of the damaged numbers that have one of these chips among theirs, or are
   * paired with one.
   */
  Set<ChipNumber> rivals(Set<ChipNumber> chips) {
    return damaged.stream()
        .filter(one -> one.names().anyMatch(chips::contains))
        .flatMap(one -> one.number.candidates().stream())
        .filter(chip -> !chips.contains(chip))
        .collect(Collectors.toSet());
  }
}
