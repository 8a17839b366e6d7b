package withers.report.text;

import java.util.Locale;

/** Names of values in the keys of texts and in JSON. */
public final class Words {
  private Words() {}

  /** A constant's name in lower case, with dashes. */
  public static String of(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
