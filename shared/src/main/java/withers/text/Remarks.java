package withers.text;

import java.util.regex.Pattern;

/**
 * What people type in their own words, checked for details of people as far as these can be told.
 */
public final class Remarks {

  /** The longest reason, in characters. */
  public static final int LONGEST = 200;

  /** Letters and what joins words: no phone and no e-mail address can be written so. */
  private static final Pattern ROLE = Pattern.compile("\\p{L}[\\p{L} .'/-]{0,39}");

  /** The sign of an e-mail address, in any width, or written out as some do. */
  private static final Pattern AT = Pattern.compile("[@\\uFF20\\uFE6B]|[(\\[{]\\s*at\\s*[)\\]}]");

  private static final Pattern DAY =
      Pattern.compile(
          "(?<!\\p{Nd})(?:\\p{Nd}{4}-\\p{Nd}{2}-\\p{Nd}{2}|\\p{Nd}{1,2}([./-])\\p{Nd}{1,2}\\1(?:\\p{Nd}{2}|\\p{Nd}{4}))(?!\\p{Nd})");

  /** Six digits or more with nothing but what joins a phone's digits between them. */
  private static final Pattern PHONE =
      Pattern.compile("\\p{Nd}(?:[\\s\\p{Z}\\p{Pd}()\\[\\]./+*_]*\\p{Nd}){5,}");

  private Remarks() {}

  /** Whether a text can be a role such as "front desk": up to 40 letters. */
  public static boolean isRole(String text) {
    return ROLE.matcher(text).matches();
  }

  /** Whether a text holds what may be a phone or an e-mail address. */
  public static boolean mayReachSomebody(String text) {
    String undated = DAY.matcher(text).replaceAll(",");
    return AT.matcher(text).find() || PHONE.matcher(undated).find();
  }
}
