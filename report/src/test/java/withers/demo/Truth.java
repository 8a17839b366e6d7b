package withers.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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

  /**
   * The animal is not where it belongs.
   *
   * @param holder who has it, if that is an organisation
   * @param over when that was over; a day to come when it isn't
   */
  private record Absence(
      Problem problem, LocalDate since, Told told, Person holder, LocalDate over) {

    boolean isOn(LocalDate day) {
      return !since.isAfter(day) && over.isAfter(day);
    }

    Absence until(LocalDate day) {
      return new Absence(problem, since, told, holder, over.isAfter(day) ? day : over);
    }
  }

  private record Registration(Source registry, String key, boolean slipped) {}

  private final Ledger ledger;
  private final List<Change> changes = new ArrayList<>();
  private final List<Change> moves = new ArrayList<>();
  private final List<Registration> registrations = new ArrayList<>();
  private final List<Source> mayHold = new ArrayList<>();
  private final List<Told> news = new ArrayList<>();
  private final List<Absence> absences = new ArrayList<>();
  private Optional<Told> shared = Optional.empty();
  private boolean sharedByOneAlike;
  private Optional<LocalDate> died = Optional.empty();
  private Optional<Person> staysFirst = Optional.empty();
  private Optional<Person> outOfSight = Optional.empty();

  Truth(Ledger ledger) {
    this.ledger = ledger;
  }

  /** Whoever takes an animal for good ends its waiting. */
  void keeper(LocalDate day, Person keeper, Told... told) {
    changes.add(new Change(day, keeper, List.of(told)));
    absences.replaceAll(absence -> absence.until(day));
  }

  /** An organisation has the animal, and it is somebody's. */
  void found(LocalDate day, Person holder, Told told) {
    absences.add(new Absence(Problem.FOUND_AND_WAITING, day, told, holder, LocalDate.MAX));
  }

  void lost(LocalDate day, Told told) {
    absences.add(
        new Absence(Problem.LOST_WITHOUT_CONTACT, day, told, Person.NOBODY, LocalDate.MAX));
  }

  /** The animal is back where it belongs, whoever was told. */
  void back(LocalDate day) {
    absences.replaceAll(absence -> absence.until(day));
  }

  /**
   * Another animal's card has the number of this one.
   *
   * @param alike whether only the days of birth are apart, which not all records state
   */
  void shared(Told told, boolean alike) {
    shared = Optional.of(told);
    sharedByOneAlike = alike;
  }

  /** The person with whom the animal has lived from before that day until now, if it lives. */
  Optional<Person> keeperSince(LocalDate day) {
    return died.isPresent() || changes.isEmpty()
        ? Optional.empty()
        : Optional.of(changes.get(changes.size() - 1))
            .filter(last -> last.day.isBefore(day) && !last.keeper.given().isEmpty())
            .map(last -> moveBefore(day).filter(m -> m.day.isAfter(last.day)).orElse(last).keeper);
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

  /** All that is wrong on a day. */
  Set<Problem> problems(LocalDate day) {
    Set<Problem> wrong = EnumSet.noneOf(Problem.class);
    absence(day).map(Absence::problem).filter(p -> isGrave(p, now(day), day)).ifPresent(wrong::add);
    shared
        .filter(card -> !card.typed.isAfter(day))
        .ifPresent(s -> wrong.add(Problem.NUMBER_SHARED));
    registered(day).ifPresent(wrong::add);
    return wrong;
  }

  private static Looking now(LocalDate day) {
    return registry -> Optional.of(day);
  }

  /** What is wrong with the registration; nothing while an organisation has the animal. */
  private Optional<Problem> registered(LocalDate day) {
    return keeperOn(day).flatMap(change -> problem(change, now(day), day));
  }

  private Optional<Absence> absence(LocalDate day) {
    boolean alive = died.filter(d -> !d.isAfter(day)).isEmpty();
    return absences.stream().filter(one -> alive && one.isOn(day)).findFirst();
  }

  /** A lost animal is as good as back when its number leads to whoever misses it. */
  private boolean isGrave(Problem problem, Looking looking, LocalDate day) {
    return problem == Problem.FOUND_AND_WAITING
        || outOfSight.isEmpty() && rows(looking).noneMatch(row -> canHelp(row, day));
  }

  private boolean canHelp(Row row, LocalDate day) {
    Person who = row.who(Role.PERSON);
    boolean organisation = who.given().isEmpty();
    return !who.phone().isEmpty()
        && (organisation || keeperOn(day).filter(change -> leads(who, change)).isPresent());
  }

  /**
   * What is wrong, as far as the exports of these rounds told: the keeper's start was typed and
   * sent, registries sent theirs long enough after it, and what they sent shows it.
   */
  Set<Problem> knowable(List<Round> rounds) {
    LocalDate day = rounds.get(rounds.size() - 1).asOf();
    Set<Problem> seen = EnumSet.noneOf(Problem.class);
    absence(day)
        .filter(absence -> isTold(absence, rounds, day))
        .ifPresent(a -> seen.add(a.problem));
    shared
        .filter(card -> isToldTwice(card, rounds))
        .ifPresent(s -> seen.add(Problem.NUMBER_SHARED));
    keeperOn(day)
        .flatMap(change -> problem(change, registry -> lastExport(registry, rounds), day))
        .filter(problem -> isTold(problem, keeperOn(day).orElseThrow(), rounds))
        .filter(problem -> registered(day).filter(problem::equals).isPresent())
        .ifPresent(seen::add);
    return seen;
  }

  private boolean isTold(Absence absence, List<Round> rounds, LocalDate day) {
    if (absence.told.known(rounds).isEmpty()) {
      return false;
    }
    return absence.problem == Problem.FOUND_AND_WAITING
        ? !absence.since.isBefore(day.minusDays(90)) && canBeAsked(absence.holder, rounds)
        : isLossTold(absence, rounds, day);
  }

  /** Whoever was told to have it before, or is registered. */
  private boolean canBeAsked(Person holder, List<Round> rounds) {
    boolean before =
        changes.stream().anyMatch(c -> !c.keeper.equals(holder) && known(c, rounds).isPresent());
    return before
        || rows(registry -> lastExport(registry, rounds))
            .map(row -> row.who(Role.PERSON))
            .anyMatch(who -> !who.phone().isEmpty() && !who.equals(holder));
  }

  private boolean isLossTold(Absence loss, List<Round> rounds, LocalDate day) {
    Looking sent = registry -> lastExport(registry, rounds);
    return !loss.since.isBefore(day.minusDays(180))
        && isGrave(loss.problem, now(day), day)
        && isGrave(loss.problem, sent, day)
        && isOldEnough(loss.since.minusDays(GRACE), rounds)
        && keeperOn(day).filter(keeper -> isRecent(keeper, rounds)).isPresent()
        && (rows(sent).findAny().isPresent() || !mayHold.contains(Source.INLAND_ACCOUNT));
  }

  /** The keeper was told, and registries sent theirs not long before that and whatever else. */
  private boolean isRecent(Change keeper, List<Round> rounds) {
    return known(keeper, rounds).filter(k -> areNewEnough(k, rounds)).isPresent()
        && news.stream()
            .flatMap(n -> n.known(rounds).stream())
            .allMatch(k -> areNewEnough(k, rounds));
  }

  private boolean isToldTwice(Told card, List<Round> rounds) {
    return !sharedByOneAlike
        && card.known(rounds).isPresent()
        && changes.stream().anyMatch(change -> known(change, rounds).isPresent());
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
    return moveBefore(rounds.get(rounds.size() - 1).asOf());
  }

  private Optional<Change> moveBefore(LocalDate day) {
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
    return moveBefore(day)
        .filter(
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
