package withers.demo;

import java.time.LocalDate;

/** An animal died, and the registry heard of it or not; or somebody only wrote that it died. */
final class DeathLife {

  private final Life life;
  private final Clinics clinics;
  private final Source clinic;
  private final LocalDate implanted;
  private final LocalDate died;
  private final Animal animal;
  private final Person owner;
  private final Ledger.Entry card;
  private final Registries registries;

  DeathLife(Life life) {
    this.life = life;
    this.clinics = new Clinics(life);
    this.clinic = clinics.any();
    this.implanted = life.dice.day(Round.DAWN, LocalDate.of(2025, 12, 1));
    this.died = life.dice.day(LocalDate.of(2026, 1, 20), LocalDate.of(2026, 8, 25));
    this.animal = life.animal(life.drawnNumber(Clinics.purchaser(clinic)), implanted);
    this.owner = life.somebody();
    this.card = clinics.card(clinic, animal, implanted, owner);
    this.registries = new Registries(life, animal);
  }

  void live() {
    card.on(implanted).put(Field.IMPLANTED, implanted).saved();
    clinics.yearly(card, implanted, died);
    card.on(died).put(Field.DIED, died).saved();
    registries.contact(life.dice.after(implanted, 1, 20), owner, Person.NOBODY);
    switch (life.dice.below(5)) {
      case 0 -> registryHeard();
      case 1 -> seenAfterwards();
      case 2 -> soldAfterwards();
      case 3 -> seenAfterwardsByTheSameClinic();
      default -> {} // still registered
    }
  }

  private void registryHeard() {
    LocalDate heard = life.dice.after(died, 1, 30);
    life.ledger.of(Source.COAST_REGISTER).forEach(entry -> ended(entry, heard));
    life.ledger.of(Source.NORTHERN_REGISTER).forEach(entry -> ended(entry, heard));
  }

  private static void ended(Ledger.Entry entry, LocalDate day) {
    entry.on(day).put(Field.ENDED, day).put(Field.END_REASON, "died").saved();
  }

  /** The wrong card was closed: another clinic sees the animal alive. */
  private void seenAfterwards() {
    LocalDate day = life.dice.after(died, 2, 30);
    Source elsewhere =
        clinic == Source.CORVELSEA_PATIENTS
            ? Source.PELLERWICK_PATIENTS
            : Source.CORVELSEA_PATIENTS;
    clinics.card(elsewhere, animal, day, owner);
  }

  private void soldAfterwards() {
    LocalDate day = life.dice.after(died, 1, 30);
    life.ledger
        .entry(Source.CORVELSEA_SALES, "V" + (100_000 + life.number))
        .on(day)
        .put(animal)
        .put(Field.SOLD, day)
        .put(Role.PERSON, life.somebodyElse(owner))
        .saved();
  }

  /** The clinic that wrote that the animal died knows best. */
  private void seenAfterwardsByTheSameClinic() {
    LocalDate day = life.dice.after(died, 5, 20);
    card.on(day).put(Field.VISIT, day).saved();
  }
}
