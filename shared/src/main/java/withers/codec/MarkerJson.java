package withers.codec;

import withers.log.ImportMarker;

/** The JSON form of an import marker, which every log stores. */
public final class MarkerJson {

  private static final Json<ImportMarker> JSON = new Json<>(MarkerTable.MARKERS);

  private MarkerJson() {}

  public static String write(ImportMarker marker) {
    return JSON.write(marker);
  }

  /**
   * Reads what {@link #write} wrote, with this or an earlier version of the program.
   *
   * @throws withers.log.LogDamagedException when the text is anything else, naming the field
   */
  public static ImportMarker read(String json) {
    return JSON.read(json);
  }
}
