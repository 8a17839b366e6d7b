package withers.bench;

/** What a stage gets through. */
enum Unit {
  ROWS,
  EVENTS;

  String word() {
    return this == ROWS ? "rows" : "events";
  }
}
