package withers.run;

import java.util.Map;
import java.util.TreeMap;

/** What keeps follow-ups from closing, in words, for tests that compare runs. */
final class Undecided {
  private Undecided() {}

  /** By animal. */
  static Map<String, String> of(Outcome outcome) {
    Map<String, String> undecided = new TreeMap<>();
    outcome
        .assessments()
        .forEach(
            one ->
                undecided.put(
                    one.chips().toString(),
                    one.undecided().stream().sorted().toList() + " " + one.question()));
    return undecided;
  }
}
