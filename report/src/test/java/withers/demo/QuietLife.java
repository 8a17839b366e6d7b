package withers.demo;

import java.time.LocalDate;
import java.util.List;

/**
 * An animal with which all is well: chipped at a clinic, adopted or sold, and registered in time to
 * whoever has it. In the proportions of the demo's lives.
 */
final class QuietLife {

  /** Whatever begins by then has settled when the first month's exports are made. */
  private static final LocalDate LAST_START = LocalDate.of(2026, 4, 10);

  private static final LocalDate LAST_VISIT = LocalDate.of(2026, 8, 25);

  private final Life life;
  private final Dice dice;
  private final Clinics clinics;

  QuietLife(Life life) {
    this.life = life;
    this.dice = life.dice;
    this.clinics = new Clinics(life);
  }

  void live() {
    LocalDate start = dice.day(Round.DAWN, LAST_START);
    int kind = dice.below(100);
    if (kind < 40) {
      chipped(start);
    } else if (kind < 78) {
      sheltered(start);
    } else {
      sold(start);
    }
  }

  private void chipped(LocalDate day) {
    Source clinic = clinics.any();
    Animal animal = life.animal(number(Clinics.purchaser(clinic)), day);
    Person owner = life.somebody();
    Ledger.Entry card = seen(clinic, animal, day, owner);
    card.on(day).put(Field.IMPLANTED, day).saved();
    registered(animal, day, owner, Person.NOBODY);
    if (dice.permille(30) && clinic != Source.NETHERSAY_PATIENTS) {
      secondChip(card, animal, owner, day);
    }
  }

  /** Under an ISO number of the usual stock. */
  private String number(int purchaser) {
    int draw = dice.below(100);
    String registries = draw < 50 ? Chips.COAST : draw < 85 ? Chips.NORTHERN : Chips.EITHER;
    return Chips.number(registries, purchaser, life.number);
  }

  /** An older chip, registered to the same person. */
  private void secondChip(Ledger.Entry card, Animal animal, Person owner, LocalDate day) {
    String older = Chips.number(Chips.NORTHERN, 70, life.number);
    card.on(day).put(Field.CHIP2, older).saved();
    LocalDate before = animal.born().plusDays(50);
    life.ledger
        .entry(Source.NORTHERN_REGISTER, "S" + (100_000 + life.number))
        .on(before)
        .put(animal)
        .put(Field.CHIP, older)
        .put(Field.SINCE, before)
        .put(Role.PERSON, owner)
        .saved();
  }

  private void sheltered(LocalDate day) {
    Shelter shelter = dice.pick(List.of(Shelter.values()));
    Animal animal = shelter.only(life.animal(number(shelter.purchaser()), day));
    boolean stray = dice.permille(500);
    Person before = stray ? Person.NOBODY : life.somebody();
    shelter.cameIn(life, animal, day, stray ? "stray" : "surrender", before);
    LocalDate left = dice.after(day, 8, 90);
    Person adopter = life.somebodyElse(before);
    shelter.left(life, animal, left, "adoption", adopter);
    registered(animal, left, adopter, shelter.secondary());
    seenByClinic(animal, left, adopter);
  }

  private void sold(LocalDate day) {
    boolean bred = dice.permille(600);
    LocalDate born = dice.after(day, -110, -60);
    Animal drawn = Animal.of(dice, life.number, number(bred ? 41 : 42), born);
    Animal animal = bred ? SellerLife.puppy(drawn) : drawn;
    Person buyer = life.somebody();
    life.ledger
        .entry(
            bred ? Source.TOLLBARROW_SALES : Source.CORVELSEA_SALES, "V" + (100_000 + life.number))
        .on(day)
        .put(animal)
        .put(Field.SOLD, day)
        .put(Field.CLIENT, "K" + buyer.id())
        .put(Role.PERSON, buyer)
        .saved();
    registered(animal, day, buyer, Person.NOBODY);
    seenByClinic(animal, day, buyer);
  }

  private void registered(Animal animal, LocalDate day, Person keeper, Person secondary) {
    Person registered = dice.permille(120) ? life.partner(keeper) : keeper;
    new Registries(life, animal).contact(dice.after(day, 0, 20), registered, secondary);
  }

  /** Half are some clinic's patients. */
  private void seenByClinic(Animal animal, LocalDate since, Person keeper) {
    if (dice.permille(500)) {
      seen(clinics.any(), animal, dice.after(since, 5, 60), keeper);
    }
  }

  /** A card with a visit about once a year, each with the reader. */
  private Ledger.Entry seen(Source clinic, Animal animal, LocalDate first, Person keeper) {
    Ledger.Entry card = clinics.card(clinic, animal, first, keeper);
    for (LocalDate day = first; !day.isAfter(LAST_VISIT); day = dice.after(day, 200, 380)) {
      card.on(day).put(Field.VISIT, day).put(Field.SCANNED, day).saved();
    }
    return card;
  }
}
