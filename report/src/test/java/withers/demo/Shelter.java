package withers.demo;

import java.time.LocalDate;

/** The shelters of the coast, and how each writes down what happens. */
enum Shelter {
  GARROWNESS(Source.GARROWNESS_STAYS, "Garrowness Shelter", "415-555-0120", 31),
  HATHERSAND(Source.HATHERSAND_MOVEMENTS, "Hathersand Animal Shelter", "415-555-0121", 32),
  ULVERSCAR(Source.ULVERSCAR_STAYS, "Ulverscar Cat Shelter", "415-555-0122", 33);

  private final Source source;
  private final Person contact;
  private final int purchaser;

  Shelter(Source source, String name, String phone, int purchaser) {
    this.source = source;
    this.contact = new Person("", "", name, phone, "", "", "", "");
    this.purchaser = purchaser;
  }

  /** The shelter as a registry's contact. */
  Person contact() {
    return contact;
  }

  Source source() {
    return source;
  }

  int purchaser() {
    return purchaser;
  }

  /** The second contact that this shelter puts on a registration after an adoption. */
  Person secondary() {
    return this == HATHERSAND ? contact : Person.NOBODY;
  }

  boolean staysPrimary() {
    return this == ULVERSCAR;
  }

  /** The shelter's name, as others write it. */
  String organisation() {
    return contact.family();
  }

  /** The animal as this shelter takes it: one takes cats only. */
  Animal only(Animal animal) {
    return this == ULVERSCAR
        ? new Animal(
            animal.number(), animal.chip(), animal.name(), "cat", animal.sex(), animal.born())
        : animal;
  }

  void cameIn(Life life, Animal animal, LocalDate day, String how, Person from) {
    if (this == HATHERSAND) {
      movement(life, animal, day, how, from);
    } else {
      stayBegins(life, animal, day, how, from);
    }
  }

  /** The animal comes from another organisation. */
  void tookOver(Life life, Animal animal, LocalDate day, String organisation) {
    if (this == HATHERSAND) {
      movement(life, animal, day, "transfer-in", Person.NOBODY);
    } else {
      stayBegins(life, animal, day, "transfer", Person.NOBODY);
    }
    life.ledger
        .last(source)
        .on(day)
        .put(this == HATHERSAND ? Field.ORG : Field.IN_ORG, organisation)
        .saved();
  }

  /** The animal goes to another organisation. */
  void passedOn(Life life, Animal animal, LocalDate day, String organisation) {
    left(life, animal, day, this == HATHERSAND ? "transfer-out" : "transfer", Person.NOBODY);
    life.ledger
        .last(source)
        .on(day)
        .put(this == HATHERSAND ? Field.ORG : Field.OUT_ORG, organisation)
        .saved();
  }

  /** An adopter brings the animal back. */
  void cameBack(Life life, Animal animal, LocalDate day, Person from) {
    if (this == HATHERSAND) {
      movement(life, animal, day, "adoption-return", from);
    } else {
      stayBegins(life, animal, day, "returned", from);
    }
  }

  void left(Life life, Animal animal, LocalDate day, String how, Person to) {
    if (this == HATHERSAND) {
      movement(life, animal, day, how, to);
    } else {
      life.ledger
          .last(source)
          .on(day)
          .put(Field.OUT_DAY, day)
          .put(Field.OUT_HOW, how)
          .put(Role.PERSON, to)
          .saved();
    }
  }

  private void stayBegins(Life life, Animal animal, LocalDate day, String how, Person from) {
    life.ledger
        .entry(source, key(life, "S"))
        .on(day)
        .put(animal)
        .put(Field.ANIMAL, animalId(life))
        .put(Field.IN_DAY, day)
        .put(Field.IN_HOW, how)
        .put(Role.FROM, from)
        .saved();
  }

  private void movement(Life life, Animal animal, LocalDate day, String how, Person person) {
    life.ledger
        .entry(source, key(life, "M"))
        .on(day)
        .put(animal)
        .put(Field.ANIMAL, animalId(life))
        .put(Field.DAY, day)
        .put(Field.MOVE, how)
        .put(Role.PERSON, person)
        .saved();
  }

  /** Numbers the records of one animal, so that each has a key of its own. */
  private String key(Life life, String letter) {
    return letter + (100_000 + life.number) + "-" + (1 + life.ledger.of(source).size());
  }

  private static String animalId(Life life) {
    return "A" + (100_000 + life.number);
  }
}
