package withers.demo;

import java.time.LocalDate;

/** A clinic's client reports the animal lost; the registry can help, or can't. */
final class LossLife {

  private final Life life;
  private final Clinics clinics;

  LossLife(Life life) {
    this.life = life;
    this.clinics = new Clinics(life);
  }

  void live() {
    LocalDate implanted = life.dice.day(Round.DAWN, LocalDate.of(2026, 3, 1));
    Source clinic = clinics.any();
    Animal animal = life.animal(life.drawnNumber(Clinics.purchaser(clinic)), implanted);
    Person owner = life.somebody();
    Ledger.Entry card = clinics.card(clinic, animal, implanted, owner);
    card.on(implanted).put(Field.IMPLANTED, implanted).saved();
    LocalDate lost = life.dice.day(LocalDate.of(2026, 5, 5), LocalDate.of(2026, 9, 26));
    clinics.yearly(card, implanted, lost.minusDays(1));
    registered(animal, owner, implanted);
    reported(animal, owner, lost);
  }

  /** The name alone, a stranger, nobody at all, or whoever it should be. */
  private void registered(Animal animal, Person owner, LocalDate implanted) {
    Registries registries = new Registries(life, animal);
    LocalDate day = life.dice.after(implanted, 0, 40);
    switch (life.dice.below(5)) {
      case 0 -> registries.contact(day, owner.nameAlone(), Person.NOBODY);
      case 1 -> registries.contact(day, life.somebodyElse(owner), owner);
      case 2 -> {} // never sent in
      case 3 -> registries.contact(day, life.partner(owner), Person.NOBODY);
      default -> registries.contact(day, owner, Person.NOBODY);
    }
  }

  private void reported(Animal animal, Person owner, LocalDate lost) {
    Person reporter = life.dice.permille(700) ? owner : life.partner(owner);
    Ledger.Entry report =
        life.ledger
            .entry(Source.LOST_AND_FOUND, "L" + (100_000 + life.number))
            .on(lost)
            .put(animal)
            .put(Field.REPORT, "lost")
            .put(Field.DAY, lost)
            .put(Role.PERSON, reporter)
            .saved();
    if (life.dice.permille(300)) {
      LocalDate back = life.dice.after(lost, 0, 12);
      report.on(back).put(Field.REUNITED, back).saved();
    }
  }
}
