package withers.ingest.rows;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import withers.source.InputRefusedException;
import withers.yaml.Nearest;

/**
 * The names in a file's first row. They are compared without regard to case and white space.
 *
 * @param file the file's name, for messages
 * @param names as they stand in the file, without white space at their ends
 */
public record Header(String file, List<String> names) {

  public Header {
    names = names.stream().map(String::strip).toList();
  }

  private static String spelling(String name) {
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
        throw Refusals.twice(file, header);
      }
      if (found == 0 && !missing.contains(header)) {
        missing.add(header);
      }
    }
    if (!missing.isEmpty()) {
      throw Refusals.missingColumns(file, missing, advice(missing));
    }
  }

  private String advice(List<String> missing) {
    Optional<String> near =
        missing.size() == 1
            ? Nearest.to(spelling(missing.get(0)), names.stream().map(Header::spelling).toList())
            : Optional.empty();
    return near.map("the nearest is \"%s\"; "::formatted).orElse("")
        + "if the export's layout has changed, change the profile";
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

  private List<Integer> places(String header) {
    String wanted = spelling(header);
    return IntStream.range(0, names.size())
        .filter(i -> spelling(names.get(i)).equals(wanted))
        .boxed()
        .toList();
  }
}
