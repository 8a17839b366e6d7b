package withers.demo;

import java.time.LocalDate;
import java.util.List;
import withers.demo.Truth.Told;

/**
 * An animal's life as it really is, and what the organisations type about it: told apart from the
 * lives of the demo, which are made to hold certain troubles. Here people do what people do, and
 * what is wrong comes of it.
 */
final class TrueLife {

  private static final LocalDate LAST_DAY = Round.last().asOf().minusDays(2);
  private static final LocalDate SEPTEMBER_EXPORTS = LocalDate.of(2026, 8, 25);
  private static final Person KENNELS =
      new Person("", "", "Tollbarrow Farm Kennels", "415-555-0140", "", "", "", "");
  private static final Person SHOP =
      new Person("", "", "Corvelsea Pet Shop", "415-555-0141", "", "", "", "");
  private static final Person PLACEHOLDER = new Person("", "", "Owner", "", "", "", "", "");

  private final long seed;
  private final Life life;
  private final Dice dice;
  private final Clinics clinics;
  private final Truth truth;
  private Animal animal;
  private Source registry = Source.COAST_REGISTER;
  private boolean slipped;

  /**
   * @param persons how many people live on the coast
   */
  TrueLife(long seed, int number, int persons) {
    this.seed = seed;
    this.life = new Life(seed, number, persons);
    this.dice = life.dice;
    this.clinics = new Clinics(life);
    this.truth = new Truth(life.ledger);
    this.animal = Animal.of(dice, number, "", LocalDate.EPOCH);
  }

  Truth truth() {
    return truth;
  }

  Ledger ledger() {
    return life.ledger;
  }

  String carried() {
    return animal.chip();
  }

  void live() {
    int origin = dice.below(100);
    if (origin < 35) {
      chippedByItsOwner();
    } else if (origin < 70) {
      throughAShelter();
    } else {
      sold();
    }
    new TrueTurn(seed, life, animal, truth).live();
  }

  private void born(int purchaser, LocalDate before) {
    String stock = dice.pick(List.of(Chips.COAST, Chips.NORTHERN, Chips.EITHER, Chips.COAST));
    String registers = dice.permille(60) ? Chips.INLAND : stock;
    animal = life.animal(Chips.number(registers, purchaser, life.number), before);
    slipped = dice.permille(15);
    registry = registry(registers);
  }

  private Source registry(String registers) {
    boolean northern = registers.equals(Chips.NORTHERN) || dice.permille(500);
    if (registers.equals(Chips.EITHER)) {
      truth.mayBeHeldBy(Source.COAST_REGISTER);
      truth.mayBeHeldBy(Source.NORTHERN_REGISTER);
      return northern ? Source.NORTHERN_REGISTER : Source.COAST_REGISTER;
    }
    Source only =
        switch (registers) {
          case Chips.COAST -> Source.COAST_REGISTER;
          case Chips.NORTHERN -> Source.NORTHERN_REGISTER;
          default -> Source.INLAND_ACCOUNT;
        };
    truth.mayBeHeldBy(only);
    return only;
  }

  private void chippedByItsOwner() {
    Source clinic = clinics.any();
    LocalDate implanted = life.start();
    born(Clinics.purchaser(clinic), implanted);
    Person owner = life.somebody();
    Ledger.Entry card = clinics.card(clinic, animal, implanted, owner);
    card.on(implanted).put(Field.IMPLANTED, implanted).saved();
    truth.keeper(implanted, owner, new Told(clinic, implanted));
    registers(owner, implanted);
    goesOn(owner, implanted, clinic, card);
  }

  private void sold() {
    boolean bred = dice.permille(600);
    LocalDate day = life.start();
    Source seller = bred ? Source.TOLLBARROW_SALES : Source.CORVELSEA_SALES;
    born(bred ? 41 : 42, day.minusDays(10));
    animal = bred ? dog(animal) : animal;
    Person before = bred ? KENNELS : SHOP;
    truth.keeper(animal.born(), before);
    if (dice.permille(350)) {
      registered(before, animal.born().plusDays(50));
    }
    Person buyer = life.somebody();
    LocalDate typed = typed(day);
    life.ledger
        .entry(seller, "V" + (100_000 + life.number))
        .on(typed)
        .put(animal)
        .put(Field.SOLD, day)
        .put(Field.CLIENT, "K" + buyer.id())
        .put(Role.PERSON, buyer)
        .saved();
    truth.keeper(day, buyer, new Told(seller, typed));
    registers(buyer, day);
    livesWith(buyer, day);
  }

  /** The kennels breed dogs alone. */
  private static Animal dog(Animal any) {
    return new Animal(any.number(), any.chip(), any.name(), "dog", any.sex(), any.born());
  }

  /** Mostly on the day or soon after, now and then weeks late. */
  private LocalDate typed(LocalDate day) {
    return dice.permille(950) ? dice.after(day, 0, 3) : dice.after(day, 15, 60);
  }

  private void throughAShelter() {
    LocalDate intake = life.start();
    Shelter shelter = dice.pick(List.of(Shelter.values()));
    born(shelter.purchaser(), intake);
    animal = shelter.only(animal);
    Person before = life.somebody();
    if (dice.permille(300)) {
      registered(before, dice.after(intake, -700, -30));
    }
    takenIn(shelter, intake, dice.permille(500) ? Person.NOBODY : before);
  }

  private void takenIn(Shelter shelter, LocalDate intake, Person from) {
    shelter.cameIn(life, animal, intake, from.id().isEmpty() ? "stray" : "surrender", from);
    truth.keeper(intake, shelter.contact());
    if (from.id().isEmpty()) {
      truth.found(intake, shelter.contact(), new Told(shelter.source(), intake));
    }
    if (dice.permille(400)) {
      registered(shelter.contact(), intake.plusDays(3));
    }
    LocalDate left = dice.after(intake, 8, 90);
    if (!left.isAfter(LAST_DAY)) {
      leaves(shelter, left);
    }
  }

  private void leaves(Shelter shelter, LocalDate day) {
    int turn = dice.below(1000);
    if (turn < 120 && shelter != Shelter.ULVERSCAR) {
      passedOn(shelter, day);
    } else if (turn < 200 && shelter == Shelter.HATHERSAND) {
      onTrial(day);
    } else if (turn < 260 && shelter == Shelter.HATHERSAND) {
      shelter.left(life, animal, day, "foster", life.somebody());
      afterwards(shelter, dice.after(day, 10, 60));
    } else {
      adopted(shelter, day);
    }
  }

  private void afterwards(Shelter shelter, LocalDate day) {
    if (!day.isAfter(LAST_DAY)) {
      adopted(shelter, day);
    }
  }

  /** Both shelters write it down, in either order and not always on the same day. */
  private void passedOn(Shelter shelter, LocalDate day) {
    Shelter other = shelter == Shelter.HATHERSAND ? Shelter.GARROWNESS : Shelter.HATHERSAND;
    shelter.passedOn(life, animal, day, other.organisation());
    LocalDate tookOver = dice.after(day, -2, 2);
    other.tookOver(life, animal, tookOver, shelter.organisation());
    truth.keeper(day, other.contact());
    afterwards(other, dice.after(day, 3, 60));
  }

  /** Until the trial is final the shelter has the last word, and most keep the animal. */
  private void onTrial(LocalDate day) {
    Person adopter = life.somebody();
    Shelter.HATHERSAND.left(life, animal, day, "trial", adopter);
    LocalDate settled = dice.after(day, 14, 60);
    if (!settled.isAfter(LAST_DAY) && dice.permille(800)) {
      Shelter.HATHERSAND.left(life, animal, settled, "trial-final", adopter);
      truth.keeper(settled, adopter, new Told(Shelter.HATHERSAND.source(), settled));
      registers(adopter, settled);
      livesWith(adopter, settled);
    }
  }

  /** Somebody brings the animal back, and somebody else takes it. */
  private void broughtBack(Shelter shelter, Person first, LocalDate day) {
    shelter.cameBack(life, animal, day, first);
    truth.keeper(day, shelter.contact());
    afterwards(shelter, dice.after(day, 5, 40));
  }

  private void adopted(Shelter shelter, LocalDate day) {
    Person adopter = life.somebody();
    shelter.left(life, animal, day, "adoption", adopter);
    truth.keeper(day, adopter, new Told(shelter.source(), day));
    if (shelter.staysPrimary()) {
      truth.staysFirst(shelter.contact());
    }
    if (shelter.staysPrimary() && dice.permille(500)) {
      registered(shelter.contact(), day);
    } else {
      registers(adopter, day);
    }
    LocalDate back = dice.after(day, 3, 60);
    if (dice.permille(60) && !back.isAfter(LAST_DAY)) {
      broughtBack(shelter, adopter, back);
    } else {
      livesWith(adopter, day);
    }
  }

  /** Some see a clinic, some never do. */
  private void livesWith(Person keeper, LocalDate since) {
    LocalDate visit = dice.after(since, 5, 60);
    if (dice.permille(500) && !visit.isAfter(LAST_DAY)) {
      Source clinic = clinics.any();
      goesOn(keeper, since, clinic, clinics.card(clinic, animal, visit, keeper));
    }
  }

  /** What happens to an animal that a clinic knows. */
  private void goesOn(Person keeper, LocalDate since, Source clinic, Ledger.Entry card) {
    LocalDate day = dice.day(since.plusDays(70), LAST_DAY);
    int turn = day.isAfter(LAST_DAY) ? 999 : dice.below(1000);
    if (turn < 110) {
      clinics.yearly(card, since);
      moves(keeper, day, clinic, card);
    } else if (turn < 190) {
      clinics.yearly(card, since, day);
      givenAway(keeper, day);
    } else if (turn < 250) {
      clinics.yearly(card, since, day);
      Shelter shelter = dice.pick(List.of(Shelter.GARROWNESS, Shelter.HATHERSAND));
      takenIn(shelter, day, keeper);
    } else if (turn < 300) {
      clinics.yearly(card, since, day);
      card.on(day).put(Field.VISIT, day).put(Field.DIED, day).saved();
      truth.died(day);
    } else if (turn < 340 && clinic != Source.NETHERSAY_PATIENTS) {
      clinics.yearly(card, since);
      secondChip(keeper, day, card);
      truth.news(new Told(clinic, day));
    } else {
      clinics.yearly(card, since);
    }
  }

  private void moves(Person keeper, LocalDate day, Source clinic, Ledger.Entry card) {
    Person moved = life.moved(keeper);
    card.on(day).put(Role.PERSON, moved).saved();
    truth.moved(day, moved, new Told(clinic, day));
    if (dice.permille(500)) {
      registered(moved, dice.after(day, 0, 20));
    }
  }

  /** A friend takes the animal; nobody writes that down, but a clinic may see the friend twice. */
  private void givenAway(Person keeper, LocalDate day) {
    Person friend = life.somebodyElse(keeper);
    LocalDate first = dice.after(day, 1, 40);
    LocalDate second = dice.day(LocalDate.of(2026, 9, 3), LocalDate.of(2026, 9, 25));
    boolean seen = !first.isAfter(SEPTEMBER_EXPORTS) && !second.isBefore(first.plusDays(60));
    if (seen && dice.permille(600)) {
      Source clinic = clinics.any();
      Ledger.Entry card = clinics.card(clinic, animal, first, friend);
      card.on(second).put(Field.VISIT, second).saved();
      truth.keeper(first, friend, new Told(clinic, first), new Told(clinic, second));
    } else {
      truth.keeper(day, friend);
    }
    if (dice.permille(500)) {
      registers(friend, day);
    }
  }

  /** An older chip turns up: registered to the keeper, or still to whoever had it before. */
  private void secondChip(Person keeper, LocalDate day, Ledger.Entry card) {
    String older = Chips.number(Chips.NORTHERN, 70, life.number);
    card.on(day).put(Field.CHIP2, older).saved();
    Person registered = dice.permille(500) ? keeper : life.somebodyElse(keeper);
    truth.mayBeHeldBy(Source.NORTHERN_REGISTER);
    truth.registration(Source.NORTHERN_REGISTER, "S" + (100_000 + life.number), false);
    life.ledger
        .entry(Source.NORTHERN_REGISTER, "S" + (100_000 + life.number))
        .on(animal.born().plusDays(50))
        .put(animal)
        .put(Field.CHIP, older)
        .put(Field.SINCE, animal.born().plusDays(50))
        .put(Role.PERSON, registered)
        .saved();
  }

  /** Seven in ten register, or their partners do; some late, some never, some without a name. */
  private void registers(Person keeper, LocalDate since) {
    int turn = dice.below(1000);
    if (turn < 620) {
      registered(keeper, dice.after(since, 0, 20));
    } else if (turn < 700) {
      registered(life.partner(keeper), dice.after(since, 0, 20));
    } else if (turn < 770) {
      registered(keeper, dice.after(since, 25, 80));
    } else if (turn < 785) {
      registered(PLACEHOLDER, since);
    }
  }

  private void registered(Person who, LocalDate day) {
    if (day.isAfter(LAST_DAY)) {
      return;
    }
    String key = "R" + (100_000 + life.number);
    Ledger.Entry record = life.ledger.entry(registry, key);
    if (registry == Source.INLAND_ACCOUNT && !who.given().isEmpty()) {
      record.removedOn(day); // a person's own account is not in the network's slice
      truth.registeredOutOfSight(who);
      return;
    }
    truth.registration(registry, key, slipped);
    record
        .on(day)
        .put(animal)
        .put(Field.CHIP, slipped ? slip(animal.chip()) : animal.chip())
        .put(Field.SINCE, day)
        .put(Field.ACCOUNT, who.given().isEmpty() ? who.family() : "")
        .put(Role.PERSON, who)
        .saved();
  }

  /** One digit is another, in the middle of what counts. */
  private static String slip(String chip) {
    int at = 9;
    char other = (char) ('0' + (chip.charAt(at) - '0' + 5) % 10);
    return chip.substring(0, at) + other + chip.substring(at + 1);
  }
}
