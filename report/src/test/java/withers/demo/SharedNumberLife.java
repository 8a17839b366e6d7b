package withers.demo;

import java.time.LocalDate;

/** Two organisations write one number on their cards, of one animal or of two. */
final class SharedNumberLife {

  private final Life life;
  private final LocalDate seen;
  private final Animal animal;
  private final Person owner;

  SharedNumberLife(Life life) {
    this.life = life;
    this.seen = life.dice.day(Round.DAWN, LocalDate.of(2026, 7, 1));
    this.animal =
        life.animal(life.drawnNumber(Clinics.purchaser(Source.PELLERWICK_PATIENTS)), seen);
    this.owner = life.somebody();
  }

  void live() {
    Clinics clinics = new Clinics(life);
    clinics.card(Source.PELLERWICK_PATIENTS, animal, seen, owner);
    new Registries(life, animal).contact(seen.plusDays(5), owner, Person.NOBODY);
    LocalDate later = life.dice.after(seen, 40, 80);
    clinics.card(Source.CORVELSEA_PATIENTS, other(), later, owner);
  }

  /** Of another kind; or years older, under another name; or the same in other words. */
  private Animal other() {
    String species = animal.species().equals("dog") ? "cat" : "dog";
    return switch (life.dice.below(4)) {
      case 0 -> described(animal.name(), species, animal.born());
      case 1 -> described("Hesper", animal.species(), animal.born().minusDays(1000));
      case 2 ->
          described(animal.name() + " Junior", animal.species(), animal.born().minusDays(900));
      default -> described("Hesper", "other", animal.born().plusDays(30));
    };
  }

  private Animal described(String name, String species, LocalDate born) {
    return new Animal(animal.number(), animal.chip(), name, species, animal.sex(), born);
  }
}
