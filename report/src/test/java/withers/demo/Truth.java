package withers.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One animal as it really is: who has it, and what each registry holds. Says what is wrong, and
 * whether the exports that were sent told enough to know it.
 */
final class Truth {

  /** Days that a new keeper has to register, and days between members' exports of one round. */
  private static final int GRACE = 30;

  private static final int DAYS_APART = 7;

  /** What was typed where, and when, so that others could know. */
  record Told(Source source, LocalDate typed) {

    /** The first export of that source that had it, among those of the rounds. */
    Optional<LocalDate> known(List<Round> rounds) {
      return rounds.stream()
          .flatMap(round -> source.exportDay(round).stream())
          .filter(day -> !day.isBefore(typed))
          .findFirst();
    }
  }

  /**
   * Somebody has the animal from that day on.
   *
   * @param told where it was typed; nowhere when only the two of them know
   */
  private record Change(LocalDate day, Person keeper, List<Told> told) {}

  private record Registration(Source registry, String key, boolean slipped) {}

  private final Ledger ledger;
  private final List<Change> changes = new ArrayList<>();
  private final List<Change> moves = new ArrayList<>();
  private final List<Registration> registrations = new ArrayList<>();
  private final List<Source> mayHold = new ArrayList<>();
  private final List<Told> news = new ArrayList<>();
  private Optional<LocalDate> died = Optional.empty();
  private Optional<Person> staysFirst = Optional.empty();
  private Optional<Person> outOfSight = Optional.empty();

  Truth(Ledger ledger) {
    this.ledger = ledger;
  }

  void keeper(LocalDate day, Person keeper, Told... told) {
    changes.add(new Change(day, keeper, List.of(told)));
  }

  void moved(LocalDate day, Person now, Told... told) {
    moves.add(new Change(day, now, List.of(told)));
  }

  /** Something else that registries must be as new as: another chip. */
  void news(Told told) {
    news.add(told);
  }

  void died(LocalDate day) {
    died = Optional.of(day);
  }

  /** This organisation is first contact for life, as agreed with the keeper. */
  void staysFirst(Person organisation) {
    staysFirst = Optional.of(organisation);
  }

  void registration(Source registry, String key, boolean slipped) {
    Registration one = new Registration(registry, key, slipped);
    if (!registrations.contains(one)) {
      registrations.add(one);
    }
  }

  /** Somebody is registered where no export tells. */
  void registeredOutOfSight(Person who) {
    outOfSight = Optional.of(who);
  }

  /** Registries that whoever reads the number has to ask. */
  void mayBeHeldBy(Source registry) {
    mayHold.add(registry);
  }

  /** What is wrong on a day; nothing while an organisation has the animal, or after its death. */
  Optional<Problem> problem(LocalDate day) {
    return keeperOn(day).flatMap(change -> problem(change, registry -> Optional.of(day), day));
  }

  /**
   * What is wrong, as far as the exports of these rounds told: the keeper's start was typed and
   * sent, registries sent theirs long enough after it, and what they sent shows it.
   */
  Optional<Problem> knowable(List<Round> rounds) {
    LocalDate day = rounds.get(rounds.size() - 1).asOf();
    Optional<Problem> seen =
        keeperOn(day)
            .flatMap(change -> problem(change, registry -> lastExport(registry, rounds), day));
    return seen.filter(problem -> isTold(problem, keeperOn(day).orElseThrow(), rounds))
        .filter(problem -> problem(day).equals(seen));
  }

  private boolean isTold(Problem problem, Change change, List<Round> rounds) {
    if (problem == Problem.WRONG_RECORD) {
      return isOldEnough(registeredSince(change, rounds), rounds) && wasOnceTold(rounds);
    }
    if (problem == Problem.NOBODY_REGISTERED && mayHold.contains(Source.INLAND_ACCOUNT)) {
      return false; // one account's slice
    }
    Optional<LocalDate> known = known(change, rounds);
    if (problem == Problem.OLD_DETAILS) {
      known = known.flatMap(k -> lastMove(rounds).flatMap(move -> known(move, rounds)));
      return known.filter(k -> isOldEnough(k, rounds)).isPresent();
    }
    return known.filter(k -> areNewEnough(k, rounds)).isPresent()
        && news.stream()
            .flatMap(n -> n.known(rounds).stream())
            .allMatch(k -> areNewEnough(k, rounds))
        && isOldEnough(change.day, rounds);
  }

  private boolean wasOnceTold(List<Round> rounds) {
    return changes.stream().anyMatch(change -> known(change, rounds).isPresent());
  }

  private Optional<LocalDate> known(Change change, List<Round> rounds) {
    List<LocalDate> known =
        change.told.stream().flatMap(told -> told.known(rounds).stream()).sorted().toList();
    return known.size() < change.told.size() || known.isEmpty()
        ? Optional.empty()
        : Optional.of(known.get(known.size() - 1));
  }

  private Optional<Change> lastMove(List<Round> rounds) {
    LocalDate day = rounds.get(rounds.size() - 1).asOf();
    return moves.stream().filter(move -> !move.day.isAfter(day)).reduce((one, next) -> next);
  }

  /** Every registry that may hold the number sent an export so long after a day. */
  private boolean isOldEnough(LocalDate since, List<Round> rounds) {
    return mayHold.stream()
        .map(registry -> lastExport(registry, rounds))
        .allMatch(sent -> sent.filter(s -> !s.isBefore(since.plusDays(GRACE))).isPresent());
  }

  private boolean areNewEnough(LocalDate known, List<Round> rounds) {
    return mayHold.stream()
        .map(registry -> lastExport(registry, rounds))
        .allMatch(sent -> sent.filter(s -> !s.isBefore(known.minusDays(DAYS_APART))).isPresent());
  }

  private static Optional<LocalDate> lastExport(Source source, List<Round> rounds) {
    return rounds.stream()
        .flatMap(round -> source.exportDay(round).stream())
        .reduce((one, next) -> next);
  }

  private LocalDate registeredSince(Change change, List<Round> rounds) {
    LocalDate day = rounds.get(rounds.size() - 1).asOf();
    return rows(registry -> Optional.of(day))
        .filter(row -> leads(row, change))
        .map(row -> LocalDate.parse(row.get(Field.SINCE)))
        .min(LocalDate::compareTo)
        .orElse(day);
  }

  /** The keeper's start, while a living animal is with a person. */
  private Optional<Change> keeperOn(LocalDate day) {
    boolean alive = died.filter(d -> !d.isAfter(day)).isEmpty();
    return changes.stream()
        .filter(change -> !change.day.isAfter(day))
        .reduce((one, next) -> next)
        .filter(change -> alive && !change.keeper.given().isEmpty());
  }

  /** When a registry is looked at. */
  private interface Looking {
    Optional<LocalDate> at(Source registry);
  }

  private Optional<Problem> problem(Change change, Looking looking, LocalDate day) {
    List<Row> rows = rows(looking).toList();
    if (rows.isEmpty() && outOfSight.filter(who -> leads(who, change)).isPresent()) {
      return Optional.empty();
    }
    if (rows.isEmpty()) {
      boolean slipped = rowsOf(looking, true).anyMatch(row -> leads(row, change));
      return Optional.of(slipped ? Problem.NUMBER_MISTYPED : Problem.NOBODY_REGISTERED);
    }
    long leading = rows.stream().filter(row -> leads(row, change)).count();
    long naming = rows.stream().filter(row -> !row.who(Role.PERSON).phone().isEmpty()).count();
    if (leading == 0) {
      return Optional.of(naming == 0 ? Problem.NOBODY_NAMED : Problem.WRONG_PERSON);
    }
    if (leading < naming) {
      return Optional.of(Problem.CHIPS_DIVERGE);
    }
    boolean byName = rows.stream().anyMatch(row -> isOf(row.who(Role.PERSON), change.keeper));
    return change.told.isEmpty() && byName
        ? Optional.of(Problem.WRONG_RECORD)
        : Optional.of(Problem.OLD_DETAILS).filter(old -> isOld(rows, change, day));
  }

  /** The keeper, under other phones and addresses than now. */
  private boolean isOld(List<Row> rows, Change change, LocalDate day) {
    Optional<Change> move =
        moves.stream().filter(one -> !one.day.isAfter(day)).reduce((one, next) -> next);
    return move.filter(
            now ->
                rows.stream()
                    .map(row -> row.who(Role.PERSON))
                    .filter(who -> who.given().equals(change.keeper.given()))
                    .anyMatch(who -> !who.phone().equals(now.keeper.phone())))
        .isPresent();
  }

  private boolean leads(Row row, Change change) {
    return leads(row.who(Role.PERSON), change);
  }

  private boolean leads(Person who, Change change) {
    return isOf(who, change.keeper) || staysFirst.filter(who::equals).isPresent();
  }

  /** The keeper, or somebody of the same household. */
  private static boolean isOf(Person who, Person keeper) {
    return who.id().equals(keeper.id()) && !who.id().isEmpty();
  }

  private Stream<Row> rows(Looking looking) {
    return rowsOf(looking, false);
  }

  /** The rows that registries hold, ended ones left out. */
  private Stream<Row> rowsOf(Looking looking, boolean slipped) {
    return registrations.stream()
        .filter(registration -> registration.slipped == slipped)
        .flatMap(one -> looking.at(one.registry).flatMap(at -> row(one, at)).stream())
        .filter(row -> row.get(Field.ENDED).isEmpty());
  }

  private Optional<Row> row(Registration one, LocalDate at) {
    return ledger.of(one.registry()).stream()
        .filter(entry -> entry.isCalled(one.key()))
        .findFirst()
        .flatMap(entry -> entry.asOn(at));
  }
}
