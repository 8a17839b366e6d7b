package withers.demo;

import java.time.LocalDate;
import java.util.List;

/** A small box of ten chips and what became of them. */
final class BoxLife {

  private static final int TEN = 10;
  private static final List<String> PURCHASERS =
      List.of("Corvelsea Pet Shop", "Tollbarrow Farm Kennels", "Hathersand Animal Shelter");

  private final Life life;
  private final LocalDate delivered;

  BoxLife(Life life) {
    this.life = life;
    this.delivered = life.dice.day(LocalDate.of(2023, 1, 10), LocalDate.of(2026, 3, 1));
  }

  void live() {
    boolean prepaid = life.dice.permille(400);
    life.ledger
        .entry(Source.SKARNHOLME_SUPPLY, "T" + (100_000 + life.number))
        .on(delivered)
        .put(Field.FIRST, number(0))
        .put(Field.LAST, number(TEN - 1))
        .put(Field.DAY, delivered)
        .put(Field.PURCHASER, life.dice.pick(PURCHASERS))
        .put(Field.PREPAID, prepaid ? "yes" : "no")
        .saved();
    int heardOf = life.dice.permille(500) ? TEN : life.dice.below(TEN);
    for (int count = 0; count < heardOf; count++) {
      heardOf(count);
    }
  }

  private String number(int count) {
    return Chips.number(
        Chips.COAST, 60 + life.number / 1_000_000 % 10, life.number % 1_000_000 * TEN + count);
  }

  private void heardOf(int count) {
    LocalDate day = life.dice.after(delivered, 10, 300);
    Animal animal = life.animal(number(count), day);
    life.ledger
        .entry(Source.COAST_REGISTER, "T" + (100_000 + life.number) + "-" + count)
        .on(day)
        .put(animal)
        .put(Field.SINCE, day)
        .put(Role.PERSON, life.somebody())
        .saved();
  }
}
