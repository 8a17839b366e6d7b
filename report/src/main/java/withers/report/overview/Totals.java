package withers.report.overview;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import withers.finding.Band;
import withers.finding.FindingKind;
import withers.report.text.Texts;

/** An overview's totals as a few lines for a terminal. */
public final class Totals {
  private static final String GAP = "  ";

  private final Overview overview;
  private final Texts texts;

  private Totals(Overview overview, Texts texts) {
    this.overview = overview;
    this.texts = texts;
  }

  /** A table of kinds by bands, those that have follow-ups, and what changed. */
  public static List<String> lines(Overview overview, Texts texts) {
    return new Totals(overview, texts).lines();
  }

  private List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(texts.say("overview.animals", overview.animals(), overview.followUps()));
    if (overview.followUps() > 0) {
      lines.addAll(aligned(rows()));
    }
    Overview.Changes changes = overview.changes();
    lines.add(texts.say("totals.changes", changes.opened(), changes.stillOpen(), changes.closed()));
    if (changes.settledByPeople() > 0) {
      lines.add(texts.say("totals.settled-by-people", changes.settledByPeople()));
    }
    return lines;
  }

  private List<List<String>> rows() {
    List<Band> bands = Stream.of(Band.values()).filter(b -> overview.followUps(b) > 0).toList();
    List<List<String>> rows = new ArrayList<>();
    rows.add(row("", bands.stream().map(b -> texts.say("band." + b.word())), total()));
    for (FindingKind kind : FindingKind.values()) {
      if (overview.followUps(kind) > 0) {
        Stream<String> counts = bands.stream().map(b -> number(overview.followUps(kind, b)));
        rows.add(row(texts.say("kind." + kind.word()), counts, number(overview.followUps(kind))));
      }
    }
    Stream<String> sums = bands.stream().map(band -> number(overview.followUps(band)));
    rows.add(row(total(), sums, number(overview.followUps())));
    return rows;
  }

  private String total() {
    return texts.say("overview.total");
  }

  private String number(long count) {
    return texts.count(count);
  }

  private static List<String> row(String first, Stream<String> middle, String last) {
    return Stream.of(Stream.of(first), middle, Stream.of(last)).flatMap(s -> s).toList();
  }

  /** The first column to the left, numbers to the right. */
  private static List<String> aligned(List<List<String>> rows) {
    List<Integer> widths =
        IntStream.range(0, rows.get(0).size()).mapToObj(column -> width(rows, column)).toList();
    return rows.stream().map(row -> aligned(row, widths)).toList();
  }

  private static int width(List<List<String>> rows, int column) {
    return Collections.max(rows.stream().map(row -> row.get(column).length()).toList());
  }

  private static String aligned(List<String> row, List<Integer> widths) {
    StringBuilder line = new StringBuilder(GAP).append(row.get(0));
    line.append(" ".repeat(widths.get(0) - row.get(0).length()));
    for (int column = 1; column < row.size(); column++) {
      String cell = row.get(column);
      line.append(GAP).append(" ".repeat(widths.get(column) - cell.length())).append(cell);
    }
    return line.toString();
  }
}
