package withers.demo;

/**
 * How often things happen in a network of any size, each from 0 to 1. The defaults are our
 * judgement of what is common; no source.
 *
 * @param trouble of animals, those with which something goes wrong: in the demo's kinds and
 *     proportions
 * @param late of animals, those of which nobody but registries sends anything before the next month
 * @param repeated of rows, those that stand in their file twice
 * @param corrected of rows, those whose day is another in the next month
 * @param changed of rows, those whose person has another phone in the next month
 * @param people persons for each animal
 */
public record Shares(
    double trouble, double late, double repeated, double corrected, double changed, double people) {

  /** What a network has unless something else is asked for. */
  public static final Shares USUAL = new Shares(0.05, 0.001, 0.001, 0.002, 0.002, 0.75);

  public Shares {
    share("trouble", trouble);
    share("late", late);
    share("repeated", repeated);
    share("corrected", corrected);
    share("changed", changed);
    share("people", people);
  }

  private static void share(String what, double share) {
    if (!(share >= 0 && share <= 1)) {
      throw new IllegalArgumentException(
          "Expected the share %s from 0 to 1, but found %s".formatted(what, share));
    }
  }
}
