package withers.demo;

import java.time.LocalDate;

/** A breeder or a pet shop sells a young animal. */
final class SellerLife {

  private static final Person KENNELS =
      new Person("", "", "Tollbarrow Farm Kennels", "415-555-0140", "", "", "", "");

  private final Life life;

  SellerLife(Life life) {
    this.life = life;
  }

  void live() {
    boolean bred = life.dice.permille(600);
    LocalDate sold = life.start();
    LocalDate born = life.dice.after(sold, -110, -60);
    Animal drawn = Animal.of(life.dice, life.number, life.drawnNumber(bred ? 41 : 42), born);
    Animal animal = bred ? puppy(drawn) : drawn;
    Person buyer = life.somebody();
    Ledger.Entry sale =
        sold(bred ? Source.TOLLBARROW_SALES : Source.CORVELSEA_SALES, animal, sold, buyer);
    if (life.dice.permille(30) && sold.isBefore(LocalDate.of(2026, 8, 1))) {
      LocalDate back = life.dice.after(sold, 5, 40);
      sale.on(back).put(Field.RETURNED, back).saved();
    }
    registered(bred, animal, sold, buyer);
    seenByClinic(animal, sold, buyer);
  }

  static Animal puppy(Animal animal) {
    return new Animal(
        animal.number(), animal.chip(), animal.name(), "dog", animal.sex(), animal.born());
  }

  private Ledger.Entry sold(Source seller, Animal animal, LocalDate day, Person buyer) {
    return life.ledger
        .entry(seller, "V" + (100_000 + life.number))
        .on(day)
        .put(animal)
        .put(Field.SOLD, day)
        .put(Field.CLIENT, "K" + buyer.id())
        .put(Role.PERSON, buyer)
        .saved();
  }

  private void registered(boolean bred, Animal animal, LocalDate sold, Person buyer) {
    Registries registries = new Registries(life, animal);
    if (bred && life.trouble == Trouble.BEHIND) {
      registries.contact(animal.born().plusDays(50), KENNELS, Person.NOBODY);
    }
    registries.afterHandover(sold, KENNELS, buyer, Person.NOBODY);
  }

  private void seenByClinic(Animal animal, LocalDate sold, Person buyer) {
    LocalDate visit = life.dice.after(sold, 5, 60);
    if (life.dice.permille(600) && !visit.isAfter(Round.last().asOf())) {
      Clinics clinics = new Clinics(life);
      clinics.yearly(clinics.card(clinics.any(), animal, visit, buyer), visit);
    }
  }
}
