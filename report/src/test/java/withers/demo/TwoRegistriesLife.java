package withers.demo;

import java.time.LocalDate;

/** A number in two registries, or in one to which it does not point. */
final class TwoRegistriesLife {

  private final Life life;
  private final LocalDate implanted;
  private final Person owner;

  TwoRegistriesLife(Life life) {
    this.life = life;
    this.implanted = life.dice.day(Round.DAWN, LocalDate.of(2026, 7, 20));
    this.owner = life.somebody();
  }

  void live() {
    switch (life.dice.below(5)) {
      case 0 -> twice(life.somebodyElse(owner));
      case 1 -> twice(life.partner(owner));
      case 2 -> twiceWithoutAnybodyElse(life.somebodyElse(owner));
      default -> elsewhere();
    }
  }

  private void twice(Person second) {
    Animal animal = at(Chips.EITHER);
    registered(animal, Source.COAST_REGISTER, owner);
    registered(animal, Source.NORTHERN_REGISTER, second);
  }

  private void twiceWithoutAnybodyElse(Person second) {
    Animal animal = life.animal(Chips.number(Chips.EITHER, 51, life.number), implanted);
    registered(animal, Source.COAST_REGISTER, owner);
    registered(animal, Source.NORTHERN_REGISTER, second);
  }

  /** The number points to one registry, and the client sent the form to the other. */
  private void elsewhere() {
    registered(at(Chips.COAST), Source.NORTHERN_REGISTER, owner);
  }

  private Animal at(String registries) {
    int purchaser = Clinics.purchaser(Source.NETHERSAY_PATIENTS);
    Animal animal = life.animal(Chips.number(registries, purchaser, life.number), implanted);
    Ledger.Entry card = new Clinics(life).card(Source.NETHERSAY_PATIENTS, animal, implanted, owner);
    card.on(implanted).put(Field.IMPLANTED, implanted).saved();
    return animal;
  }

  private void registered(Animal animal, Source registry, Person contact) {
    LocalDate day = life.dice.after(implanted, 1, 30);
    new Registries(life, animal, registry).contact(day, contact, Person.NOBODY);
  }
}
