package withers.matching.form;

import java.util.List;

/**
 * The tokens of one reading of a name.
 *
 * @param particles those of the family names, folded and joined
 */
record Parts(List<Token> given, List<Token> either, List<Token> family, String particles) {

  static Parts unknown(List<Token> only) {
    return new Parts(List.of(), only, List.of(), "");
  }

  /** Given and family name the other way round. */
  Parts swapped() {
    return new Parts(family, either, given, "");
  }

  Parts withFamily(Parts other) {
    return new Parts(given, either, other.family, other.particles);
  }

  /** One word or several, whose part nobody knows, taken for given names. */
  Parts asGiven() {
    List<Token> all = Lists.joined(Lists.joined(given, either), family);
    return new Parts(all, List.of(), List.of(), "");
  }

  boolean isEmpty() {
    return given.isEmpty() && either.isEmpty() && family.isEmpty();
  }
}
