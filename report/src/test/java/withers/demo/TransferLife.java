package withers.demo;

import java.time.LocalDate;

/**
 * An animal goes from one shelter to another, which both write down, on whatever day they get to
 * it; or it leaves the network; or it comes from abroad.
 */
final class TransferLife {

  private final Life life;
  private final LocalDate intake;
  private final Animal animal;
  private final Registries registries;

  TransferLife(Life life) {
    this.life = life;
    this.intake = life.dice.day(LocalDate.of(2025, 1, 10), LocalDate.of(2026, 6, 1));
    this.animal = life.animal(life.drawnNumber(Shelter.GARROWNESS.purchaser()), intake);
    this.registries = new Registries(life, animal);
  }

  void live() {
    switch (life.dice.below(6)) {
      case 0 -> leavesTheNetwork();
      case 1 -> comesFromAbroad();
      case 2 -> passedOn(Shelter.HATHERSAND, Shelter.GARROWNESS);
      default -> passedOn(Shelter.GARROWNESS, Shelter.HATHERSAND);
    }
  }

  /** The day of the first shelter and that of the second may be either way round. */
  private void passedOn(Shelter first, Shelter second) {
    Person before = life.somebody();
    first.cameIn(life, animal, intake, "surrender", before);
    LocalDate arrived = life.dice.after(intake, 5, 40);
    LocalDate written = life.dice.after(arrived, -3, 4);
    second.tookOver(life, animal, arrived, first.organisation());
    registries.contact(intake.plusDays(2), first.contact(), Person.NOBODY);
    if (life.dice.permille(700)) {
      LocalDate adopted = life.dice.after(arrived, 0, 30);
      Person adopter = life.somebodyElse(before);
      second.left(life, animal, adopted, "adoption", adopter);
      registries.afterHandover(adopted, first.contact(), adopter, second.secondary());
    }
    first.passedOn(life, animal, written, second.organisation());
  }

  private void leavesTheNetwork() {
    Shelter.GARROWNESS.cameIn(life, animal, intake, "surrender", life.somebody());
    registries.contact(intake.plusDays(2), Shelter.GARROWNESS.contact(), Person.NOBODY);
    Shelter.GARROWNESS.passedOn(
        life, animal, life.dice.after(intake, 5, 40), "Far Reach Greyhound Rescue");
  }

  private void comesFromAbroad() {
    Shelter.HATHERSAND.cameIn(life, animal, intake, "import", Person.NOBODY);
    LocalDate trial = life.dice.after(intake, 5, 30);
    Person adopter = life.somebody();
    Shelter.HATHERSAND.left(life, animal, trial, "trial", adopter);
    registries.contact(intake.plusDays(2), Shelter.HATHERSAND.contact(), Person.NOBODY);
    if (life.dice.permille(600)) {
      LocalDate settled = life.dice.after(trial, 20, 60);
      Shelter.HATHERSAND.left(life, animal, settled, "trial-final", adopter);
      registries.afterHandover(
          settled, Shelter.HATHERSAND.contact(), adopter, Shelter.HATHERSAND.contact());
    }
  }
}
