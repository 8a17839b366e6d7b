package withers.demo;

import java.time.LocalDate;

/** The reader says nothing where a chip should be: once, again, or only until the next visit. */
final class ScanLife {

  private final Life life;

  ScanLife(Life life) {
    this.life = life;
  }

  void live() {
    LocalDate implanted = life.dice.day(Round.DAWN, LocalDate.of(2025, 6, 1));
    Source clinic = Source.VENDLEMOUTH_PATIENTS;
    Animal animal = life.animal(life.drawnNumber(Clinics.purchaser(clinic)), implanted);
    Person owner = life.somebody();
    Ledger.Entry card = new Clinics(life).card(clinic, animal, implanted, owner);
    card.on(implanted).put(Field.IMPLANTED, implanted).saved();
    new Registries(life, animal).contact(implanted.plusDays(4), owner, Person.NOBODY);
    LocalDate silent = life.dice.day(LocalDate.of(2025, 8, 1), LocalDate.of(2026, 8, 28));
    Clinics.scan(card, silent, "not-detected");
    LocalDate again = life.dice.after(silent, 3, 60);
    if (life.dice.permille(400) && again.isBefore(Round.last().asOf())) {
      Clinics.scan(card, again, life.dice.permille(700) ? "read" : "not-detected");
    }
  }
}
