package withers.demo;

import java.time.LocalDate;
import java.util.function.Function;

/** One animal's life as it is being told, and what every kind of life needs. */
final class Life {

  private static final LocalDate LAST_DAY = Round.last().asOf().minusDays(2);

  final int number;
  final Dice dice;
  final Ledger ledger = new Ledger();
  final Trouble trouble;
  private final People people;
  private final int persons;

  /**
   * @param number of the animal, from 0
   * @param persons how many people live on the coast
   */
  Life(long seed, int number, int persons) {
    this(seed, number, persons, Trouble::of);
  }

  /**
   * @param trouble draws what goes wrong
   */
  Life(long seed, int number, int persons, Function<Dice, Trouble> trouble) {
    this.number = number;
    this.persons = persons;
    this.dice = Dice.of(seed, "animal", number);
    this.people = new People(seed);
    this.trouble = trouble.apply(dice);
  }

  Person somebody() {
    return people.person(dice.below(persons));
  }

  Person somebodyElse(Person person) {
    Person other = somebody();
    return other.id().equals(person.id()) ? people.person(persons) : other;
  }

  Person partner(Person person) {
    return people.partner(person);
  }

  Person moved(Person person) {
    return people.moved(person);
  }

  /** The day on which something starts: any day of the records, often a recent one. */
  LocalDate start() {
    LocalDate earliest = dice.permille(180) ? LAST_DAY.minusDays(130) : Round.DAWN;
    return dice.day(earliest, LAST_DAY);
  }

  Animal animal(String chip, LocalDate before) {
    return Animal.of(dice, number, chip, dice.after(before, -900, -60));
  }

  /** A chip of the usual stock of whoever bought it. */
  String drawnNumber(int purchaser) {
    int draw = dice.below(100);
    if (draw < 4) {
      return draw < 2 ? Chips.nineDigits(number) : Chips.tenCharacters(number);
    }
    String registries = draw < 50 ? Chips.COAST : draw < 85 ? Chips.NORTHERN : Chips.EITHER;
    return Chips.number(registries, purchaser, number);
  }

  /** How many days a keeper takes to send a registration in: one in eight takes too long. */
  LocalDate registeredAfter(LocalDate handover) {
    return dice.permille(125) ? dice.after(handover, 25, 70) : dice.after(handover, 0, 20);
  }

  /** The September day on which somebody acts on a follow-up, for one in four; else never. */
  LocalDate putRight(LocalDate never) {
    return dice.permille(250) ? dice.day(Round.first().asOf().plusDays(2), LAST_DAY) : never;
  }
}
