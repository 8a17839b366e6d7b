package withers.registration;

import java.util.Collection;
import java.util.Set;
import java.util.stream.Collectors;
import withers.finding.NotJudged;

/**
 * Whether registries' silence about a number means that it is not registered.
 *
 * @param isFull whether it does
 * @param lacking when it does not, what is lacking; empty when a registry answered that it holds
 *     the number, or when no registry may hold it
 */
public record Covering(boolean isFull, Set<NotJudged> lacking) {
  static final Covering FULL = new Covering(true, Set.of());
  static final Covering NOT = new Covering(false, Set.of());

  public Covering {
    lacking = Set.copyOf(lacking);
  }

  static Covering lacking(NotJudged lack) {
    return new Covering(false, Set.of(lack));
  }

  static Covering all(Collection<Covering> parts) {
    return new Covering(
        parts.stream().allMatch(Covering::isFull),
        parts.stream().flatMap(part -> part.lacking.stream()).collect(Collectors.toSet()));
  }
}
