package withers.contacts;

import java.util.Locale;

/** The fields by which contacts are compared. */
public enum Field {
  NAME,
  PHONE,
  EMAIL,
  ADDRESS;

  /** The field's stable name, as in docs and JSON. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
