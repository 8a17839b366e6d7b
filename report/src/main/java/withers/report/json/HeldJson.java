package withers.report.json;

import withers.report.privacy.Held;

/** All that is held on a person, as JSON. */
public final class HeldJson {
  private HeldJson() {}

  /** One object, indented. */
  public static String of(Held held) {
    return Json.of(held);
  }
}
