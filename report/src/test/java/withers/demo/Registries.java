package withers.demo;

import java.time.LocalDate;

/** Registers an animal in whichever registry its number points to. */
final class Registries {

  private static final LocalDate NEVER = LocalDate.MAX;
  private static final int SOME_MONTHS = 400;

  private final Life life;
  private final Animal animal;
  private final Source registry;

  Registries(Life life, Animal animal) {
    this(life, animal, registryOf(animal.chip(), life.number));
  }

  /** Registers in that registry, whether the number points to it or not. */
  Registries(Life life, Animal animal, Source registry) {
    this.life = life;
    this.animal = animal;
    this.registry = registry;
  }

  private static Source registryOf(String chip, int number) {
    if (chip.length() < 15 || chip.startsWith("999" + Chips.COAST)) {
      return Source.COAST_REGISTER;
    }
    if (chip.startsWith("999" + Chips.INLAND)) {
      return Source.INLAND_ACCOUNT;
    }
    return chip.startsWith("999" + Chips.NORTHERN) || number % 2 == 0
        ? Source.NORTHERN_REGISTER
        : Source.COAST_REGISTER;
  }

  /** The registry has this contact from that day on. */
  void contact(LocalDate day, Person primary, Person secondary) {
    if (registry == Source.INLAND_ACCOUNT && !primary.given().isEmpty()) {
      record().removedOn(day); // a person's own account is not in the network's slice
      return;
    }
    record()
        .on(day)
        .put(animal)
        .put(Field.SINCE, day)
        .put(Field.ACCOUNT, primary.given().isEmpty() ? primary.family() : "")
        .put(Role.PERSON, primary)
        .put(Role.SECONDARY, secondary)
        .saved();
  }

  private Ledger.Entry record() {
    return life.ledger.entry(registry, "R" + (100_000 + life.number));
  }

  /**
   * What the registry has after a hand-over, with whatever trouble this life has.
   *
   * @param before whom the registry names until it hears otherwise; nobody when it has no record
   */
  void afterHandover(LocalDate handover, Person before, Person keeper, Person secondary) {
    LocalDate day = life.registeredAfter(handover);
    switch (life.trouble) {
      case NONE -> contact(day, life.dice.permille(120) ? life.partner(keeper) : keeper, secondary);
      case DETAILS -> contact(day, life.moved(keeper), secondary);
      case STRANGER ->
          contact(life.dice.after(handover, 60, SOME_MONTHS), life.somebodyElse(keeper), secondary);
      case UNREGISTERED, BEHIND -> late(handover, before, keeper, secondary);
    }
  }

  private void late(LocalDate handover, Person before, Person keeper, Person secondary) {
    LocalDate day = life.putRight(NEVER);
    if (day.isAfter(handover) && !day.equals(NEVER) && !before.equals(keeper)) {
      contact(day, keeper, secondary);
    }
  }
}
