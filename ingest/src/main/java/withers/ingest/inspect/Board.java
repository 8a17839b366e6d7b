package withers.ingest.inspect;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** Everything that the columns of a file can be in one layout, and how well it fits. */
final class Board {

  private static final double HOPELESS = -12;

  private record Place(Field field, int column) {}

  private final Layout layout;
  private final List<Column> columns;
  private final List<Field> fields;
  private final List<Candidate> candidates = new ArrayList<>();
  private final Map<Place, Candidate> byPlace = new HashMap<>();
  private final PairScore pairs;
  private final Structure structure;
  private final double[][] known;

  Board(
      Layout layout,
      List<Column> columns,
      HeaderScore headers,
      ContentScore contents,
      PairScore pairs) {
    this.layout = layout;
    this.columns = columns;
    this.fields = layout.fields();
    this.pairs = pairs;
    this.structure = new Structure(layout);
    for (Field field : fields) {
      for (Column column : columns) {
        add(field, column, headers.of(layout, field, column), contents.of(field, column));
      }
    }
    this.known = new double[candidates.size()][candidates.size()];
    for (double[] row : known) {
      Arrays.fill(row, Double.NaN);
    }
  }

  private void add(Field field, Column column, double header, double content) {
    boolean isPossible = content > ContentScore.IMPOSSIBLE && header + content > HOPELESS;
    if (isPossible && !column.header().isBlank()) {
      Candidate candidate = new Candidate(candidates.size(), field, column, header, content);
      candidates.add(candidate);
      byPlace.put(new Place(field, column.place()), candidate);
    }
  }

  Layout layout() {
    return layout;
  }

  List<Column> columns() {
    return columns;
  }

  List<Candidate> candidates() {
    return candidates;
  }

  /** The candidate that makes the column this field. */
  Optional<Candidate> find(Field field, Column column) {
    return Optional.ofNullable(byPlace.get(new Place(field, column.place())));
  }

  /** What two of them say for each other, in bits. */
  double pair(Candidate one, Candidate two) {
    double[] row = known[Math.min(one.index(), two.index())];
    int at = Math.max(one.index(), two.index());
    if (Double.isNaN(row[at])) {
      row[at] = pairs.of(one.field(), one.column(), two.field(), two.column());
    }
    return row[at];
  }

  /** How well all of them fit together, in bits. */
  double total(List<Candidate> chosen) {
    double total = structure.of(chosen);
    for (int i = 0; i < chosen.size(); i++) {
      total += chosen.get(i).score();
      for (int j = i + 1; j < chosen.size(); j++) {
        total += pair(chosen.get(i), chosen.get(j));
      }
    }
    return total;
  }

  /** The assignment that is best when each column is looked at for itself. */
  List<Candidate> bestOneByOne(Predicate<Candidate> allowed) {
    double[][] gain = new double[columns.size()][fields.size()];
    for (double[] row : gain) {
      Arrays.fill(row, ContentScore.IMPOSSIBLE);
    }
    Candidate[][] at = new Candidate[columns.size()][fields.size()];
    for (Candidate candidate : candidates) {
      if (allowed.test(candidate)) {
        int field = fields.indexOf(candidate.field());
        gain[candidate.column().place()][field] = candidate.score();
        at[candidate.column().place()][field] = candidate;
      }
    }
    int[] match = BestMatch.of(gain);
    List<Candidate> chosen = new ArrayList<>();
    for (int c = 0; c < match.length; c++) {
      if (match[c] >= 0 && at[c][match[c]] != null) {
        chosen.add(at[c][match[c]]);
      }
    }
    return chosen;
  }
}
