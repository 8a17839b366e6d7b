package withers.matching.form;

import java.util.List;

/**
 * A name cut into its parts. A name of one word, whose part nobody knows, has it in {@code either}
 * and nothing else. The text form never shows it.
 *
 * @param given given names and their initials, in the order written; the first is the one that
 *     counts most, though many go by the second
 * @param either words that may be further given names or family names: what stands in the middle of
 *     {@code María García Molina}
 * @param family family names without their particles, in the order written, each half of a
 *     double-barrelled one for itself
 * @param particles the particles of the family names, folded and joined ({@code vander}), or empty
 * @param joinedGiven all of {@code given} as one word ({@code minsu} for {@code Min-su}), when
 *     there are several; else the only one, or {@link NameWord#NONE}
 * @param joinedFamily all of {@code family} as one word, with its particles ({@code vandermeer});
 *     {@link NameWord#NONE} if there is none
 */
public record Reading(
    List<NameWord> given,
    List<NameWord> either,
    List<NameWord> family,
    String particles,
    NameWord joinedGiven,
    NameWord joinedFamily) {

  public Reading {
    given = List.copyOf(given);
    either = List.copyOf(either);
    family = List.copyOf(family);
  }

  @Override
  public String toString() {
    return "Reading[details withheld]";
  }
}
