package withers.ingest.rows;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import withers.source.InputRefusedException;
import withers.yaml.Nearest;

/**
 * The names in a file's first row. They are compared without regard to case and white space.
 *
 * <p>A column whose name others have too is named with its place among them: {@code Phone#2} is the
 * second one that is called Phone.
 *
 * @param file the file's name, for messages
 * @param line the line on which it stands, from 1
 * @param names as they stand in the file, without white space at their ends
 */
public record Header(String file, long line, List<String> names) {

  private static final Pattern NUMBERED = Pattern.compile("(.+)#([1-9][0-9]?)");

  public Header {
    names = names.stream().map(String::strip).toList();
  }

  /** A header on the first line. */
  public Header(String file, List<String> names) {
    this(file, 1, names);
  }

  /** A name as it is compared. */
  static String spelling(String name) {
    return name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
  }

  public int size() {
    return names.size();
  }

  /**
   * Makes sure that the header has each of these columns once.
   *
   * @throws InputRefusedException naming all that are missing
   */
  public void require(List<String> wanted) {
    List<String> missing = new ArrayList<>();
    for (String header : wanted) {
      int found = places(header).size();
      if (found > 1) {
        throw Refusals.twice(file, line, header);
      }
      if (found == 0 && !missing.contains(header)) {
        missing.add(header);
      }
    }
    if (!missing.isEmpty()) {
      throw Refusals.missingColumns(file, line, missing, advice(missing));
    }
  }

  private String advice(List<String> missing) {
    Optional<String> near =
        missing.size() == 1 ? nearest(spelling(missing.get(0))) : Optional.empty();
    return near.map(name -> name.replaceAll("[\\p{Cc}\\p{Cf}]", "?"))
            .map("the nearest is \"%s\"; "::formatted)
            .orElse("")
        + "if the export's layout has changed, change the profile";
  }

  /** What is much longer is no slip of the pen, and may be anything where a header is missing. */
  private Optional<String> nearest(String wanted) {
    return Nearest.to(
        wanted,
        names.stream()
            .map(Header::spelling)
            .filter(name -> name.length() <= 2 * wanted.length())
            .toList());
  }

  /**
   * Where a required column stands.
   *
   * @return position from 0
   * @throws IllegalStateException when it was never required
   */
  public int place(String header) {
    List<Integer> places = places(header);
    if (places.isEmpty()) {
      throw new IllegalStateException("Expected a column that was required before: " + header);
    }
    return places.get(0);
  }

  /** How many of these columns it has. */
  public long count(List<String> wanted) {
    return wanted.stream().filter(header -> !places(header).isEmpty()).count();
  }

  private List<Integer> places(String header) {
    String wanted = spelling(header);
    List<Integer> exactly = placesOf(wanted);
    Matcher numbered = NUMBERED.matcher(wanted);
    if (exactly.isEmpty() && numbered.matches()) {
      return placesOf(numbered.group(1)).stream()
          .skip(Integer.parseInt(numbered.group(2)) - 1L)
          .limit(1)
          .toList();
    }
    return exactly;
  }

  private List<Integer> placesOf(String spelling) {
    return IntStream.range(0, names.size())
        .filter(i -> spelling(names.get(i)).equals(spelling))
        .boxed()
        .toList();
  }
}
