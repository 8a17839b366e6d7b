package withers.ingest.sniff;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * What something may be, the likeliest first; of equal confidence, in the order in which they were
 * given. Empty when nothing speaks for anything.
 */
public record Finding<T>(List<Guess<T>> guesses) {

  /** By how much the first must lead the second to be taken without asking, in percent. */
  public static final int LEAD = 20;

  public Finding {
    guesses =
        guesses.stream()
            .sorted(Comparator.comparingInt((Guess<T> guess) -> guess.confidence()).reversed())
            .toList();
  }

  /** Something that leaves no doubt. */
  public static <T> Finding<T> certain(T value, String evidence) {
    return new Finding<>(List.of(new Guess<>(value, 100, evidence)));
  }

  /** Nothing was found. */
  public static <T> Finding<T> nothing() {
    return new Finding<>(List.of());
  }

  public Optional<Guess<T>> best() {
    return guesses.stream().findFirst();
  }

  /** What else it might be, the likeliest first. */
  public List<Guess<T>> runnersUp() {
    return guesses.stream().skip(1).toList();
  }

  /**
   * The likeliest, if it can be taken without asking: at least as likely as this, and well ahead of
   * every other.
   *
   * @param confidence in percent
   */
  public Optional<T> ifClear(int confidence) {
    int second = guesses.size() > 1 ? guesses.get(1).confidence() : 0;
    return best()
        .filter(guess -> guess.confidence() >= confidence)
        .filter(guess -> guesses.size() == 1 || guess.confidence() - second >= LEAD)
        .map(Guess::value);
  }

  /** The first of these findings that found anything. */
  static <T> Finding<T> firstOf(List<Supplier<Finding<T>>> findings) {
    return findings.stream()
        .map(Supplier::get)
        .filter(finding -> !finding.guesses.isEmpty())
        .findFirst()
        .orElseGet(Finding::nothing);
  }
}
