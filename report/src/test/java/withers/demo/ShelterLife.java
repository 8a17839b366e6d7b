package withers.demo;

import java.time.LocalDate;
import java.util.List;

/** An animal comes to a shelter, and mostly finds a new home. */
final class ShelterLife {

  private static final List<Shelter> ALL = List.of(Shelter.values());
  private static final LocalDate LAST_RETURN = Round.last().asOf().minusDays(40);

  private final Life life;
  private final Shelter shelter;
  private final LocalDate intake;
  private final Animal animal;
  private final Person before;
  private final Registries registries;
  private final boolean stray;

  ShelterLife(Life life) {
    this.life = life;
    this.shelter = life.dice.pick(ALL);
    this.intake = life.start();
    this.animal = shelter.only(life.animal(chip(life, shelter), intake));
    this.before = life.somebody();
    this.registries = new Registries(life, animal);
    this.stray = life.dice.permille(500);
  }

  private static String chip(Life life, Shelter shelter) {
    boolean inland = shelter == Shelter.GARROWNESS && life.dice.permille(80);
    return inland
        ? Chips.number(Chips.INLAND, shelter.purchaser(), life.number)
        : life.drawnNumber(shelter.purchaser());
  }

  void live() {
    shelter.cameIn(
        life, animal, intake, stray ? "stray" : "surrender", stray ? Person.NOBODY : before);
    registeredBefore();
    LocalDate left = life.dice.after(intake, 8, 90);
    int turn = life.dice.below(1000);
    if (left.isAfter(Round.last().asOf().minusDays(2)) || turn < 60) {
      return; // still in care
    }
    if (turn < 90) {
      shelter.left(life, animal, left, "died", Person.NOBODY);
    } else if (stray && turn < 260) {
      goesHome(left);
    } else {
      findsHome(left);
    }
  }

  /** Whom the registry names when the animal leaves: the shelter, or still the previous owner. */
  private void registeredBefore() {
    if (life.trouble != Trouble.UNREGISTERED) {
      boolean shelterToldRegistry = life.dice.permille(700);
      registries.contact(
          shelterToldRegistry ? intake.plusDays(3) : life.dice.after(intake, -700, -30),
          shelterToldRegistry ? shelter.contact() : before,
          Person.NOBODY);
    }
  }

  private void goesHome(LocalDate day) {
    shelter.left(life, animal, day, "owner", before);
    registries.contact(life.dice.after(day, 0, 9), before, Person.NOBODY);
  }

  private void findsHome(LocalDate day) {
    Person adopter = life.somebodyElse(before);
    LocalDate back = life.dice.after(day, 5, 60);
    if (life.dice.permille(60) && back.isBefore(LAST_RETURN)) {
      comesBack(day, back, adopter);
    } else {
      adopted(day, adopter);
    }
  }

  /** The first adopter brings the animal back; somebody else takes it. */
  private void comesBack(LocalDate day, LocalDate back, Person first) {
    shelter.left(life, animal, day, "adoption", first);
    registries.contact(day.plusDays(2), first, shelter.secondary());
    shelter.cameBack(life, animal, back, first);
    adopted(life.dice.after(back, 5, 30), life.somebodyElse(first));
  }

  private void adopted(LocalDate day, Person adopter) {
    shelter.left(life, animal, day, "adoption", adopter);
    if (shelter.staysPrimary() && life.trouble == Trouble.NONE && life.dice.permille(600)) {
      registries.contact(day, shelter.contact(), adopter);
    } else {
      registries.afterHandover(day, shelter.contact(), adopter, shelter.secondary());
    }
    seenByClinic(day, adopter);
  }

  private void seenByClinic(LocalDate day, Person adopter) {
    LocalDate visit = life.dice.after(day, 5, 60);
    if (life.dice.permille(500) && !visit.isAfter(Round.last().asOf())) {
      Clinics clinics = new Clinics(life);
      clinics.yearly(clinics.card(clinics.any(), animal, visit, adopter), visit);
    }
  }
}
