package withers.registration;

import java.util.Collection;
import java.util.Set;
import java.util.stream.Collectors;
import withers.finding.NotJudged;

/**
 * Whether registries' silence about a number means that it is not registered.
 *
 * @param isFull whether it does
 * @param isHeld whether a registry answered, when it was asked, that it holds the number
 * @param lacking when neither, what is lacking; empty when no registry may hold the number
 */
public record Covering(boolean isFull, boolean isHeld, Set<NotJudged> lacking) {
  static final Covering FULL = new Covering(true, false, Set.of());
  static final Covering HELD = new Covering(false, true, Set.of());
  static final Covering NOT = new Covering(false, false, Set.of());

  public Covering {
    lacking = Set.copyOf(lacking);
  }

  static Covering lacking(NotJudged lack) {
    return new Covering(false, false, Set.of(lack));
  }

  /** The silence of all together. */
  public static Covering all(Collection<Covering> parts) {
    return new Covering(
        parts.stream().allMatch(Covering::isFull),
        parts.stream().anyMatch(Covering::isHeld),
        parts.stream().flatMap(part -> part.lacking.stream()).collect(Collectors.toSet()));
  }
}
