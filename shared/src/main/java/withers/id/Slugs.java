package withers.id;

/** Short names that are safe as file names, keys and parts of an address. */
public final class Slugs {
  private static final int LONGEST = 40;

  private Slugs() {}

  /**
   * Returns the value when it is 1 to 40 lower-case letters, digits and inner dashes.
   *
   * @throws IllegalArgumentException otherwise, naming the thing and the value
   */
  public static String checked(String what, String value) {
    if (!isSlug(value)) {
      throw new IllegalArgumentException(
          "Expected %s of 1 to 40 lower-case letters, digits and dashes, but found \"%s\""
              .formatted(what, value));
    }
    return value;
  }

  // No regular expression: every event that is read from the log comes through here.
  private static boolean isSlug(String value) {
    int length = value.length();
    if (length < 1 || length > LONGEST) {
      return false;
    }
    for (int i = 0; i < length; i++) {
      boolean inner = i > 0 && i < length - 1;
      if (!isLetterOrDigit(value.charAt(i)) && !(inner && value.charAt(i) == '-')) {
        return false;
      }
    }
    return true;
  }

  private static boolean isLetterOrDigit(char c) {
    return c >= 'a' && c <= 'z' || c >= '0' && c <= '9';
  }
}
