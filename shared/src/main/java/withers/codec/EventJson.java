package withers.codec;

import withers.fact.ChipEvent;

/** The JSON form of a chip event: one line, the same for equal events, without people's details. */
public final class EventJson {

  private static final Json<ChipEvent> JSON = new Json<>(WireTable.EVENTS);

  private EventJson() {}

  public static String write(ChipEvent event) {
    return JSON.write(event);
  }

  /**
   * Reads what {@link #write} wrote, with this or an earlier version of the program.
   *
   * @throws withers.log.LogDamagedException when the text is anything else, naming the field
   */
  public static ChipEvent read(String json) {
    return JSON.read(json);
  }
}
