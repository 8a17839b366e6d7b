package withers.corpus;

import java.util.List;

/**
 * A given or family name.
 *
 * @param spellings how it is written, the usual one (or that in its own script) first
 */
record Name(List<String> spellings) {

  Name {
    spellings = List.copyOf(spellings);
  }

  static Name of(String written) {
    return new Name(List.of(written.split("/")));
  }

  /** What makes two written names one. */
  String key() {
    return spellings.get(0);
  }

  String spelled(int spelling) {
    return spellings.get(Math.min(spelling, spellings.size() - 1));
  }
}
