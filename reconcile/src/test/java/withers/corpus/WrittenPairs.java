package withers.corpus;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import withers.contact.Contact;
import withers.matching.Verdict;

/** Reads the pairs that were written by hand: {@code withers/matching/pairs.txt} says how. */
public final class WrittenPairs {
  private static final String FILE = "/withers/matching/pairs.txt";
  private static final Map<String, Verdict> VERDICTS =
      Map.of(
          "same person", Verdict.SAME,
          "details differ", Verdict.DETAILS_DIFFER,
          "same household", Verdict.SAME_HOUSEHOLD,
          "different person", Verdict.DIFFERENT,
          "cannot tell", Verdict.CANNOT_TELL);

  private WrittenPairs() {}

  public static List<WrittenPair> read() {
    List<String> lines = lines();
    List<WrittenPair> pairs = new ArrayList<>();
    Verdict verdict = Verdict.CANNOT_TELL;
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (line.startsWith("== ")) {
        verdict = Objects.requireNonNull(VERDICTS.get(line.substring(3)), line);
      } else if (line.matches("[A-Z]{2}")) {
        pairs.add(pair(lines, i, verdict));
      }
    }
    return List.copyOf(pairs);
  }

  private static WrittenPair pair(List<String> lines, int at, Verdict verdict) {
    Contact one = contact(lines.get(at + 1));
    Contact other = contact(lines.get(at + 2));
    return new WrittenPair(at + 1, lines.get(at), one, other, verdict, lines.get(at + 3));
  }

  private static Contact contact(String line) {
    String[] cells = line.split("\\|", -1);
    if (cells.length != 6) {
      throw new IllegalStateException("Expected 6 cells, but found " + cells.length + ": " + line);
    }
    int slash = cells[0].indexOf(" / ");
    return new Contact(
        slash < 0 ? cells[0] : "",
        slash < 0 ? "" : cells[0].substring(0, slash),
        slash < 0 ? "" : cells[0].substring(slash + 3),
        List.of(cells[1].split(";")),
        List.of(cells[2].split(";")),
        List.of(cells[3].split(";")),
        cells[4],
        cells[5],
        "",
        "");
  }

  private static List<String> lines() {
    try (InputStream stream =
        Objects.requireNonNull(WrittenPairs.class.getResourceAsStream(FILE), FILE)) {
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(FILE, unreadable);
    }
  }
}
