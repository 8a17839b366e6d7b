package withers.demo;

/** Tells which kind of life each animal has. */
final class Lives {

  private Lives() {}

  /**
   * The records of one animal.
   *
   * @param persons how many people live on the coast
   */
  static Ledger of(long seed, int number, int persons) {
    Life life = new Life(seed, number, persons);
    int kind = life.dice.below(100);
    if (kind < 40) {
      new ClinicLife(life).live();
    } else if (kind < 78) {
      new ShelterLife(life).live();
    } else {
      new SellerLife(life).live();
    }
    return life.ledger;
  }
}
