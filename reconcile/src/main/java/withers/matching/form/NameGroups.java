package withers.matching.form;

import java.util.List;

/** The groups of a name in one piece, and which of them are the family name. */
record NameGroups(List<NameGroup> all) {

  static NameGroups of(List<Token> tokens) {
    return new NameGroups(NameGroup.of(tokens));
  }

  int size() {
    return all.size();
  }

  NameGroup get(int at) {
    return all.get(at);
  }

  NameGroup last() {
    return all.get(all.size() - 1);
  }

  /** The words of the groups from one to before another. */
  List<Token> words(int from, int to) {
    return to - from == 1
        ? all.get(from).tokens()
        : all.subList(from, to).stream().flatMap(group -> group.tokens().stream()).toList();
  }

  /** The words of the groups from one on. */
  List<Token> from(int start) {
    return words(start, all.size());
  }

  /** How many groups at the beginning are in capitals while others are not: the family name. */
  int capitalsFirst() {
    int end = 0;
    while (end < all.size() && all.get(end).isCapitals()) {
      end++;
    }
    boolean others = Lists.all(Lists.from(all, end), NameGroup::isNotCapitals);
    return end < all.size() && others ? end : 0;
  }

  /** Where capitals begin that go on to the end, or 0. */
  int capitalsLast() {
    int start = all.size();
    while (start > 0 && (all.get(start - 1).isCapitals() || isParticleOfCapitals(start))) {
      start--;
    }
    boolean others = Lists.all(all.subList(0, start), NameGroup::isNotCapitals);
    return start < all.size() && others ? start : 0;
  }

  private boolean isParticleOfCapitals(int end) {
    return end < all.size() && end > 1 && all.get(end - 1).isParticle();
  }

  /** Whether the family name stands first: by what each of the two ends is. */
  boolean startsWithFamily() {
    NameGroup first = all.get(0);
    if (last().isInitial() && !first.isInitial()) {
      return true;
    }
    if (first.isParticle() && first.isSmall()) {
      return all.size() > 2;
    }
    boolean given = first.isGivenName() && last().tokens().size() == 1;
    return first.isEastern() && !last().isEastern() && !given;
  }

  /** How many groups a family name at the beginning has: particles, and one more. */
  int endOfFamily() {
    int end = 0;
    while (end < all.size() - 2 && all.get(end).isParticle() && all.get(end).isSmall()) {
      end++;
    }
    return end + 1;
  }

  /** Where a family name at the end begins: with its particles, and never with the first group. */
  int startOfFamily() {
    int start = all.size() - 1;
    while (start > 1 && all.get(start - 1).isParticle()) {
      start--;
    }
    return start;
  }
}
