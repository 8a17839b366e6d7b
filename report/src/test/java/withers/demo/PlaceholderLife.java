package withers.demo;

import java.time.LocalDate;
import java.util.List;

/** Somewhere a name had to be filled in, and none was known. */
final class PlaceholderLife {

  private static final List<String> NAMES =
      List.of("Unknown", "Owner", "N/A", "T.B.C.", "Cash Sale", "NEW OWNER", "x", "client");

  private final Life life;
  private final Clinics clinics;
  private final LocalDate day;
  private final Animal animal;
  private final Person owner;
  private final Person placeholder;
  private final Registries registries;

  PlaceholderLife(Life life) {
    this.life = life;
    this.clinics = new Clinics(life);
    this.day = life.dice.day(LocalDate.of(2024, 1, 5), LocalDate.of(2026, 8, 10));
    this.animal =
        life.animal(life.drawnNumber(Clinics.purchaser(Source.VENDLEMOUTH_PATIENTS)), day);
    this.owner = life.somebody();
    this.placeholder = new Person("0", "", life.dice.pick(NAMES), "", "", "", "", "");
    this.registries = new Registries(life, animal);
  }

  void live() {
    switch (life.dice.below(6)) {
      case 0 -> registered(placeholder);
      case 1 -> registered(owner.nameAlone());
      case 2 -> registered(placeholder.withPhone("000-000-0000"));
      case 3 -> registered(placeholder.withPhone(owner.phone()));
      case 4 -> cashSale();
      default -> unknownClient();
    }
  }

  /** The keeper is known to the clinic, the registry names nobody who could be reached. */
  private void registered(Person contact) {
    seenBy(owner, day);
    registries.contact(life.dice.after(day, 1, 20), contact, Person.NOBODY);
  }

  /** Sold to nobody in particular, and later at a clinic with whoever has it. */
  private void cashSale() {
    life.ledger
        .entry(Source.CORVELSEA_SALES, "V" + (100_000 + life.number))
        .on(day)
        .put(animal)
        .put(Field.SOLD, day)
        .put(Role.PERSON, placeholder)
        .saved();
    seenBy(owner, day.plusDays(30));
  }

  /** A card without a client, and later one with. */
  private void unknownClient() {
    Ledger.Entry card = seenBy(placeholder, day);
    LocalDate named = life.dice.after(day, 20, 60);
    card.on(named)
        .put(Field.CLIENT, "C" + owner.id())
        .put(Role.PERSON, owner)
        .put(Field.VISIT, named)
        .saved();
    registries.afterHandover(day, Person.NOBODY, owner, Person.NOBODY);
  }

  private Ledger.Entry seenBy(Person client, LocalDate first) {
    Ledger.Entry card = clinics.card(Source.VENDLEMOUTH_PATIENTS, animal, first, client);
    return card.on(first).put(Field.IMPLANTED, first).saved();
  }
}
