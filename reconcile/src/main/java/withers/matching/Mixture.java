package withers.matching;

import java.util.List;

/**
 * Pairs as a mixture of classes, within each of which traits are independent: the model of Fellegi
 * and Sunter (A Theory for Record Linkage, JASA 64, 1969), with any number of classes.
 *
 * @param classes two for matches and others; more when pairs may also be something between
 */
public record Mixture(List<PairClass> classes) {

  /**
   * One kind of pairs.
   *
   * @param share of all pairs, from 0 to 1
   * @param levels by trait, how often each level occurs; each sums up to 1
   */
  public record PairClass(double share, List<List<Double>> levels) {
    public PairClass {
      levels = levels.stream().map(List::copyOf).toList();
    }

    /** The probability of meeting a pair of this class with this pattern. */
    double joint(Pattern pattern) {
      double product = share;
      for (int trait = 0; trait < pattern.size(); trait++) {
        int level = pattern.level(trait);
        product *= level == Pattern.MISSING ? 1 : levels.get(trait).get(level);
      }
      return product;
    }
  }

  public Mixture {
    classes = List.copyOf(classes);
  }

  /** The probability of a pattern, whatever the class. */
  double probability(Pattern pattern) {
    return classes.stream().mapToDouble(one -> one.joint(pattern)).sum();
  }

  /** The probability that a pair with this pattern is of that class. */
  public double posterior(int which, Pattern pattern) {
    return classes.get(which).joint(pattern) / probability(pattern);
  }
}
