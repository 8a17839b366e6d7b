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

  /** Shares in a thousand, chosen to give every kind enough cases; invented. */
  static Trouble of(Dice dice) {
    int draw = dice.below(1000);
    if (draw < 80) {
      return UNREGISTERED;
    }
    if (draw < 140) {
      return BEHIND;
    }
    if (draw < 190) {
      return DETAILS;
    }
    return draw < 205 ? STRANGER : NONE;
  }
}
