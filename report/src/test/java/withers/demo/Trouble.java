package withers.demo;

/** What goes wrong in an animal's records; mostly nothing. */
enum Trouble {
  NONE,
  /** Nobody ever sent the registration in. */
  UNREGISTERED,
  /** Nobody told the registry that the animal changed hands. */
  BEHIND,
  /** The registry knows the keeper, under an old phone and address. */
  DETAILS,
  /** A stranger registered the animal after our last handover. */
  STRANGER;

  private static final int SOME = 205;

  /** Shares in a thousand, chosen to give every kind enough cases; invented. */
  static Trouble of(Dice dice) {
    return drawn(dice.below(1000));
  }

  /** Something, in the same proportions. */
  static Trouble some(Dice dice) {
    return drawn(dice.below(SOME));
  }

  private static Trouble drawn(int draw) {
    if (draw < 80) {
      return UNREGISTERED;
    }
    if (draw < 140) {
      return BEHIND;
    }
    if (draw < 190) {
      return DETAILS;
    }
    return draw < SOME ? STRANGER : NONE;
  }
}
