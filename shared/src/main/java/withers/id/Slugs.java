package withers.id;

import java.util.regex.Pattern;

/** Short names that are safe as file names, keys and parts of an address. */
public final class Slugs {
  private static final Pattern SHAPE = Pattern.compile("[a-z0-9](?:[a-z0-9-]{0,38}[a-z0-9])?");

  private Slugs() {}

  /**
   * Returns the value when it is 1 to 40 lower-case letters, digits and inner dashes.
   *
   * @throws IllegalArgumentException otherwise, naming the thing and the value
   */
  public static String checked(String what, String value) {
    if (!SHAPE.matcher(value).matches()) {
      throw new IllegalArgumentException(
          "Expected %s of 1 to 40 lower-case letters, digits and dashes, but found \"%s\""
              .formatted(what, value));
    }
    return value;
  }
}
