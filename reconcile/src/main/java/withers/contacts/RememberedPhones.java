package withers.contacts;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.UnaryOperator;

/**
 * Remembers how phones were read: a household's number stands in many records, and reading it costs
 * more than all the rest of a contact. Safe for several threads.
 *
 * @param reader reads a phone; what groups its digits makes no difference to it
 * @param read what was read, by {@link #bare}
 */
record RememberedPhones(UnaryOperator<String> reader, Map<String, String> read)
    implements UnaryOperator<String> {

  /** Beyond that it starts anew. Some 150 bytes each. */
  private static final int MOST_KEPT = 200_000;

  private static final String GROUPING = " -.()";

  RememberedPhones(UnaryOperator<String> reader) {
    this(reader, new ConcurrentHashMap<>());
  }

  @Override
  public String apply(String written) {
    String bare = bare(written);
    String known = read.get(bare);
    return known == null ? read(bare) : known;
  }

  private String read(String bare) {
    String fresh = reader.apply(bare);
    if (read.size() >= MOST_KEPT) {
      read.clear();
    }
    read.put(bare, fresh);
    return fresh;
  }

  /** The phone without spaces, dashes, dots and brackets, if there is nothing else to it. */
  static String bare(String written) {
    StringBuilder bare = new StringBuilder(written.length());
    for (int i = 0; i < written.length(); i++) {
      char c = written.charAt(i);
      if (c >= '0' && c <= '9' || c == '+') {
        bare.append(c);
      } else if (GROUPING.indexOf(c) < 0) {
        return written;
      }
    }
    return bare.toString();
  }
}
