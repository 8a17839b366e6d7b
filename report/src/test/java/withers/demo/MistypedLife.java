package withers.demo;

import java.time.LocalDate;

/**
 * A chip put in at a clinic; the registry has the client under a number one slip away. Or somebody
 * else is registered there, or the other number is a neighbour from the same pack.
 */
final class MistypedLife {

  private final Life life;
  private final LocalDate implanted;
  private final Animal animal;
  private final Person owner;

  MistypedLife(Life life) {
    this.life = life;
    this.implanted = life.dice.day(Round.DAWN, LocalDate.of(2026, 8, 20));
    String registries = life.dice.permille(500) ? Chips.COAST : Chips.NORTHERN;
    int purchaser = Clinics.purchaser(Source.CORVELSEA_PATIENTS);
    this.animal = life.animal(Chips.number(registries, purchaser, life.number), implanted);
    this.owner = life.somebody();
  }

  void live() {
    Clinics clinics = new Clinics(life);
    Ledger.Entry card = clinics.card(Source.CORVELSEA_PATIENTS, animal, implanted, owner);
    card.on(implanted).put(Field.IMPLANTED, implanted).saved();
    clinics.yearly(card, implanted);
    switch (life.dice.below(7)) {
      case 0 -> registered(changed(6), owner, animal.species());
      case 1 -> registered(changed(7), life.moved(owner), animal.species());
      case 2 -> registered(swapped(6), owner, animal.species());
      case 3 -> registered(changed(13), owner, animal.species()); // a pack neighbour
      case 4 -> registered(changed(6), life.somebodyElse(owner), animal.species());
      case 5 -> registered(changed(6), owner, animal.species().equals("dog") ? "cat" : "dog");
      default -> twoMayBeMeant();
    }
  }

  private void twoMayBeMeant() {
    registered(changed(6), owner, animal.species());
    registered(swapped(6), owner, animal.species());
  }

  /** The number with another digit at that place. */
  private String changed(int at) {
    char digit = (char) ('0' + (animal.chip().charAt(at) - '0' + 4) % 10);
    return animal.chip().substring(0, at) + digit + animal.chip().substring(at + 1);
  }

  /** The number with the digit at that place and the next one swapped. */
  private String swapped(int at) {
    String chip = animal.chip();
    return chip.substring(0, at) + chip.charAt(at + 1) + chip.charAt(at) + chip.substring(at + 2);
  }

  private void registered(String number, Person contact, String species) {
    Source registry =
        number.startsWith("999" + Chips.COAST) ? Source.COAST_REGISTER : Source.NORTHERN_REGISTER;
    LocalDate day = implanted.plusDays(6);
    life.ledger
        .entry(registry, "R" + (100_000 + life.number) + "-" + life.ledger.of(registry).size())
        .on(day)
        .put(animal)
        .put(Field.CHIP, number)
        .put(Field.SPECIES, species)
        .put(Field.SINCE, day)
        .put(Role.PERSON, contact)
        .saved();
  }
}
