package withers.bench;

import java.util.Locale;

/** What a stage gets through. */
enum Unit {
  ROWS,
  EVENTS,
  BYTES,
  ANIMALS,
  FINDINGS,
  NUMBERS;

  String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
