package withers.demo;

import java.time.LocalDate;
import java.util.List;

/** A number that somebody reads, and of which only the sale of its box is known. */
final class PurchaserLife {

  private static final List<Integer> PURCHASERS = List.of(11, 12, 13, 31, 33, 41, 42);

  private final Life life;

  PurchaserLife(Life life) {
    this.life = life;
  }

  void live() {
    LocalDate seen = life.dice.day(LocalDate.of(2026, 2, 1), LocalDate.of(2026, 9, 10));
    String registries = life.dice.permille(700) ? Chips.COAST : Chips.NORTHERN;
    int purchaser = life.dice.pick(PURCHASERS);
    Animal animal = life.animal(Chips.number(registries, purchaser, life.number), seen);
    if (life.dice.permille(500)) {
      Person finder = new Person("0", "", "Finder", "", "", "", "", "");
      Ledger.Entry card = new Clinics(life).card(Source.VENDLEMOUTH_PATIENTS, animal, seen, finder);
      Clinics.scan(card, seen, "read");
    } else {
      reportedFound(animal, seen);
    }
    if (life.dice.permille(200)) {
      new Registries(life, animal).contact(seen.minusDays(100), life.somebody(), Person.NOBODY);
    }
  }

  private void reportedFound(Animal animal, LocalDate seen) {
    life.ledger
        .entry(Source.LOST_AND_FOUND, "L" + (100_000 + life.number))
        .on(seen)
        .put(animal)
        .put(Field.REPORT, "found")
        .put(Field.DAY, seen)
        .put(Role.PERSON, life.somebody())
        .saved();
  }
}
