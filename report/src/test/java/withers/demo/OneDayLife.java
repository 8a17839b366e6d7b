package withers.demo;

import java.time.LocalDate;
import java.util.List;

/** Much happens on one day: what came last follows from who gave to whom, or can't be told. */
final class OneDayLife {

  private final Life life;
  private final LocalDate intake;
  private final LocalDate day;
  private final Animal animal;
  private final Person first;
  private final Person second;
  private final Registries registries;

  OneDayLife(Life life) {
    this.life = life;
    this.intake = life.dice.day(LocalDate.of(2025, 3, 1), LocalDate.of(2026, 6, 20));
    this.day = life.dice.after(intake, 6, 50);
    this.animal = life.animal(life.drawnNumber(Shelter.HATHERSAND.purchaser()), intake);
    this.first = life.somebody();
    this.second = life.somebodyElse(first);
    this.registries = new Registries(life, animal);
  }

  void live() {
    Shelter shelter = life.dice.pick(List.of(Shelter.GARROWNESS, Shelter.HATHERSAND));
    shelter.cameIn(life, animal, intake, "surrender", life.somebodyElse(first));
    registries.contact(intake.plusDays(1), shelter.contact(), Person.NOBODY);
    switch (life.dice.below(5)) {
      case 0 -> backAgain(shelter);
      case 1 -> backAndAdopted(shelter);
      case 2 -> adoptedTwice(shelter);
      case 3 -> adoptedByACouple(shelter);
      default -> adoptedAndPassedOn(shelter);
    }
  }

  /** Adopted in the morning, back in the evening. */
  private void backAgain(Shelter shelter) {
    shelter.left(life, animal, day, "adoption", first);
    shelter.cameBack(life, animal, day, first);
  }

  private void backAndAdopted(Shelter shelter) {
    LocalDate before = day.minusDays(4);
    shelter.left(life, animal, before, "adoption", first);
    registries.contact(before.plusDays(1), first, Person.NOBODY);
    shelter.cameBack(life, animal, day, first);
    shelter.left(life, animal, day, "adoption", second);
    registries.afterHandover(day, first, second, Person.NOBODY);
  }

  /** Two shelters each say that their adopter has the animal. */
  private void adoptedTwice(Shelter shelter) {
    Shelter other = shelter == Shelter.GARROWNESS ? Shelter.HATHERSAND : Shelter.GARROWNESS;
    shelter.left(life, animal, day, "adoption", first);
    other.cameIn(life, animal, intake.plusDays(2), "stray", Person.NOBODY);
    other.left(life, animal, day, "adoption", second);
    registries.contact(day.plusDays(9), first, Person.NOBODY);
  }

  private void adoptedByACouple(Shelter shelter) {
    Shelter other = shelter == Shelter.GARROWNESS ? Shelter.HATHERSAND : Shelter.GARROWNESS;
    shelter.passedOn(life, animal, day, other.organisation());
    other.tookOver(life, animal, day, shelter.organisation());
    other.left(life, animal, day, "adoption", first);
    registries.contact(day.plusDays(9), life.partner(first), Person.NOBODY);
  }

  /** The shelter's own words go two ways. */
  private void adoptedAndPassedOn(Shelter shelter) {
    Shelter other = shelter == Shelter.GARROWNESS ? Shelter.HATHERSAND : Shelter.GARROWNESS;
    shelter.left(life, animal, day, "adoption", first);
    other.tookOver(life, animal, day, shelter.organisation());
    registries.contact(day.plusDays(9), first, Person.NOBODY);
  }
}
