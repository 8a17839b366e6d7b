package withers.settled;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Stream;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.cases.Settled;
import withers.cases.Settlement;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.settled.Relations.ClientOf;

/**
 * What people settled about follow-ups, as far as it counts: what was taken back or replaced is
 * left out. Of what was settled about one follow-up the one recorded last counts; records with a
 * mistaken number add up. Immutable; safe for several threads.
 */
public final class Settlements {

  /** Nothing is settled. */
  public static final Settlements NONE = of(List.of(), LocalDate.EPOCH);

  private final LocalDate asOf;
  private final Map<CaseKey, List<Settled>> byCase;
  private final Set<ChipNumber> anchors;
  private final Map<ChipNumber, List<Settled>> mistaken;
  private final Map<ChipNumber, Set<String>> oneAnimal;
  private final Relations relations;

  private Settlements(Map<CaseKey, List<Settled>> byCase, LocalDate asOf) {
    this.asOf = asOf;
    this.byCase = byCase;
    this.anchors = new HashSet<>();
    this.mistaken = new HashMap<>();
    this.oneAnimal = new HashMap<>();
    counting().forEach(this::index);
    this.relations = Relations.of(counting().toList(), asOf);
  }

  private Settlements(Settlements same, Relations relations) {
    this.asOf = same.asOf;
    this.byCase = same.byCase;
    this.anchors = same.anchors;
    this.mistaken = same.mistaken;
    this.oneAnimal = same.oneAnimal;
    this.relations = relations;
  }

  /**
   * What counts of these.
   *
   * @param told in any order, repeated or not
   * @param asOf the day that is judged
   */
  public static Settlements of(Collection<Settled> told, LocalDate asOf) {
    TreeMap<Long, Settled> inOrder = new TreeMap<>();
    told.forEach(one -> inOrder.put(one.number(), one));
    Map<CaseKey, List<Settled>> byCase = new HashMap<>();
    inOrder.values().forEach(one -> apply(one, byCase));
    return new Settlements(byCase, asOf);
  }

  private static void apply(Settled next, Map<CaseKey, List<Settled>> byCase) {
    List<Settled> before = byCase.computeIfAbsent(next.key(), key -> new ArrayList<>());
    before.removeIf(one -> replaces(next, one));
    if (!(next.says() instanceof Settlement.TakenBack)) {
      before.add(next);
    }
  }

  /** What is put off is not answered: that leaves what was found out as it is. */
  private static boolean replaces(Settled next, Settled before) {
    return isSnooze(next) ? isSnooze(before) : !(isOfRecord(before) && isOfRecord(next));
  }

  private static boolean isSnooze(Settled one) {
    return one.says() instanceof Settlement.ForLater;
  }

  private static boolean isOfRecord(Settled one) {
    return one.says() instanceof Settlement.MistakenNumber;
  }

  private void index(Settled one) {
    if (one.key().anchor() instanceof Anchor.Chip chip) {
      anchors.add(chip.number());
    }
    if (one.isOver(asOf)) {
      return;
    }
    if (one.says() instanceof Settlement.MistakenNumber record) {
      mistaken.computeIfAbsent(record.number(), chip -> new ArrayList<>()).add(one);
    }
    if (one.says() instanceof Settlement.OneAnimal animal) {
      oneAnimal
          .computeIfAbsent(animal.number(), chip -> new HashSet<>())
          .addAll(animal.descriptions());
    }
  }

  /** All that counts, in the order of recording; some of it may be over. */
  public List<Settled> all() {
    return counting().toList();
  }

  private Stream<Settled> counting() {
    return byCase.values().stream()
        .flatMap(List::stream)
        .sorted(Comparator.comparingLong(Settled::number));
  }

  /** Whether something was settled about a follow-up of an animal with one of these chips. */
  public boolean concern(Collection<ChipNumber> chips) {
    return !anchors.isEmpty() && chips.stream().anyMatch(anchors::contains);
  }

  /**
   * What was settled about a follow-up, the last of it if there is more.
   *
   * @param names what the follow-up may be called: an animal has as many as it has chips
   */
  public Optional<Settled> last(Stream<CaseKey> names) {
    return last(names, one -> !isSnooze(one));
  }

  /** Until when a follow-up was put off, if it was; the same for its names. */
  public Optional<Settled> snooze(Stream<CaseKey> names) {
    return last(names, Settlements::isSnooze);
  }

  private Optional<Settled> last(Stream<CaseKey> names, Predicate<Settled> isMeant) {
    return names
        .flatMap(name -> byCase.getOrDefault(name, List.of()).stream())
        .filter(isMeant)
        .max(Comparator.comparingLong(Settled::number));
  }

  /** Whether that has no end, or the end has not come. */
  public boolean isStanding(Settled one) {
    return !one.isOver(asOf);
  }

  /** The numbers that records have by mistake, while that holds. */
  public Set<ChipNumber> mistaken() {
    return Set.copyOf(mistaken.keySet());
  }

  /** Records that have a number by mistake, while that holds. */
  public List<Settled> mistaken(ChipNumber number) {
    return mistaken.getOrDefault(number, List.of());
  }

  /** Digests of descriptions of one number that are of one animal, though they contradict. */
  public Set<String> oneAnimal(ChipNumber number) {
    return oneAnimal.getOrDefault(number, Set.of());
  }

  /**
   * The same, with other contacts that sources know as clients whom something was settled about.
   */
  public Settlements withVersions(Map<ContactRef, Set<ClientOf>> versions) {
    return versions.isEmpty() ? this : new Settlements(this, relations.withVersions(versions));
  }

  /** How pairs of people stand to each other. */
  public Relations relations() {
    return relations;
  }

  /**
   * Follow-ups that are gone while what was settled about people or numbers holds, whatever the
   * records say.
   */
  public Set<CaseKey> answered() {
    Set<CaseKey> answered = new HashSet<>();
    counting()
        .filter(this::isStanding)
        .filter(one -> !(one.says() instanceof Settlement.RightAsItIs) && !isSnooze(one))
        .forEach(one -> answered.add(one.key()));
    return answered;
  }
}
