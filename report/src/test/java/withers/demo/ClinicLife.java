package withers.demo;

import java.time.LocalDate;

/** A clinic's client has an animal chipped, and perhaps gives it away without telling anybody. */
final class ClinicLife {

  private final Life life;
  private final Clinics clinics;

  ClinicLife(Life life) {
    this.life = life;
    this.clinics = new Clinics(life);
  }

  void live() {
    Source clinic = clinics.any();
    LocalDate implanted = life.start();
    Animal animal = life.animal(life.drawnNumber(Clinics.purchaser(clinic)), implanted);
    Person owner = life.somebody();
    Ledger.Entry card = clinics.card(clinic, animal, implanted, owner);
    card.on(implanted).put(Field.IMPLANTED, implanted).saved();
    if (life.trouble == Trouble.BEHIND) {
      givenAway(animal, owner, clinic, implanted);
    } else if (life.dice.permille(40)) {
      LocalDate died = life.dice.day(implanted.plusDays(30), Round.last().asOf().minusDays(3));
      clinics.yearly(card, implanted, died);
      card.on(died).put(Field.VISIT, died).put(Field.DIED, died).saved();
    } else {
      clinics.yearly(card, implanted);
      new Registries(life, animal).afterHandover(implanted, Person.NOBODY, owner, Person.NOBODY);
      ordinaryTurns(card, animal, clinic, owner, implanted);
    }
  }

  /** Another client brings the animal to another clinic, twice, months apart. */
  private void givenAway(Animal animal, Person owner, Source clinic, LocalDate implanted) {
    Registries registries = new Registries(life, animal);
    registries.contact(life.dice.after(implanted, 0, 20), owner, Person.NOBODY);
    LocalDate first = life.dice.day(LocalDate.of(2026, 5, 1), LocalDate.of(2026, 6, 20));
    Source elsewhere = clinics.any();
    if (elsewhere != clinic && implanted.isBefore(first.minusDays(90))) {
      Ledger.Entry card = clinics.card(elsewhere, animal, first, life.somebodyElse(owner));
      LocalDate second = life.dice.day(LocalDate.of(2026, 9, 3), LocalDate.of(2026, 9, 25));
      card.on(second).put(Field.VISIT, second).saved();
    }
  }

  private void ordinaryTurns(
      Ledger.Entry card, Animal animal, Source clinic, Person owner, LocalDate implanted) {
    int turn = life.dice.below(1000);
    LocalDate day = life.dice.day(implanted.plusDays(30), Round.last().asOf().minusDays(3));
    if (turn < 40 && clinic != Source.NETHERSAY_PATIENTS) {
      secondChip(card, animal, clinic, owner, day);
    } else if (turn < 60) {
      card.on(implanted).put(Field.CHIP, Chips.damaged(life.dice, animal.chip())).saved();
    } else if (turn < 100 && life.trouble == Trouble.NONE) {
      movedAndTold(card, animal, owner, day);
    } else if (turn < 135) {
      lostAndFound(animal, owner);
    }
  }

  /** Lost in summer; most are home later within days. */
  private void lostAndFound(Animal animal, Person owner) {
    LocalDate day = life.dice.day(LocalDate.of(2026, 5, 5), LocalDate.of(2026, 9, 26));
    if (day.isBefore(animal.born().plusDays(120))) {
      return;
    }
    boolean found = life.dice.permille(400);
    Ledger.Entry report =
        life.ledger
            .entry(Source.LOST_AND_FOUND, "L" + (100_000 + life.number))
            .on(day)
            .put(animal)
            .put(Field.REPORT, found ? "found" : "lost")
            .put(Field.DAY, day)
            .put(Field.ORG, found ? "Garrowness Shelter" : "")
            .put(Role.PERSON, found ? Person.NOBODY : owner)
            .saved();
    if (life.dice.permille(700)) {
      LocalDate home = life.dice.after(day, 0, 12);
      report.on(home).put(Field.REUNITED, home).saved();
    }
  }

  private void movedAndTold(Ledger.Entry card, Animal animal, Person owner, LocalDate day) {
    Person moved = life.moved(owner);
    card.on(day).put(Role.PERSON, moved).saved();
    new Registries(life, animal).contact(day, moved, Person.NOBODY);
  }

  /** An older chip turns up: registered to the same person, or still to whoever had it before. */
  private void secondChip(
      Ledger.Entry card, Animal animal, Source clinic, Person owner, LocalDate day) {
    String older = Chips.number(Chips.NORTHERN, Clinics.purchaser(clinic) + 50, life.number);
    card.on(day).put(Field.CHIP2, older).saved();
    Person registered = life.dice.permille(500) ? owner : life.somebodyElse(owner);
    life.ledger
        .entry(Source.NORTHERN_REGISTER, "S" + (100_000 + life.number))
        .on(animal.born().plusDays(50))
        .put(animal)
        .put(Field.CHIP, older)
        .put(Field.SINCE, animal.born().plusDays(50))
        .put(Role.PERSON, registered)
        .saved();
  }
}
