package withers.corpus;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;
import withers.corpus.Left.Piece;

/** What a judge makes of a corpus: figures, and tables in the form of docs/matching.md. */
public final class Score {
  private static final String QUALITY =
      "| pairs | number | precision | recall | cannot tell |\n| --- | --- | --- | --- | --- |\n";
  private static final String VERDICTS =
      "| %s | pairs | same | details differ | same household | cannot tell | different |\n"
          + "| --- | --- | --- | --- | --- | --- | --- |\n";

  private final List<Judged> judged;

  private Score(List<Judged> judged) {
    this.judged = judged;
  }

  /**
   * Judges the first pairs of a corpus.
   *
   * @param judges how contacts of a workspace in a country are compared, by ISO 3166-1 alpha-2
   */
  public static Score of(Mix mix, int count, Function<String, Judge> judges) {
    Map<String, Judge> known = new HashMap<>();
    return new Score(
        new Corpus(mix)
            .pairs(count)
            .map(pair -> Judged.of(pair, known.computeIfAbsent(pair.country(), judges)))
            .toList());
  }

  public Tally all() {
    return those(one -> true);
  }

  /** The pairs that a sensible person could tell. */
  public Tally clear() {
    return those(Judged::isClear);
  }

  private Tally those(Predicate<Judged> which) {
    return Tally.of(judged.stream().filter(which).toList());
  }

  /** All tables, in Markdown. */
  public String tables() {
    return String.join("\n", quality(), kinds(), corruptions());
  }

  private String quality() {
    List<String> rows = new ArrayList<>();
    rows.add(row("all", all()));
    for (Reach reach : Reach.values()) {
      rows.add(row(reach.words(), those(one -> one.left().reach(one.kind().truth()) == reach)));
    }
    rows.add(row("both state name and phone only", stating(Piece.PHONE)));
    rows.add(row("both state name and address only", stating(Piece.ADDRESS)));
    rows.add(row("both state name and e-mail only", stating(Piece.EMAIL)));
    rows.add(row("both state the name only", stating()));
    return QUALITY + String.join("", rows);
  }

  private Tally stating(Piece... details) {
    return those(one -> one.left().isNameStated() && one.left().details().equals(List.of(details)));
  }

  private static String row(String what, Tally tally) {
    return "| " + what + tally.quality() + "\n";
  }

  private String kinds() {
    StringBuilder table = new StringBuilder(VERDICTS.formatted("percent of all pairs of a kind"));
    for (Kind kind : Kind.ALL) {
      Tally tally = those(one -> one.kind() == kind);
      table.append("| `").append(kind).append('`').append(tally.verdicts()).append('\n');
    }
    table.append("| a household that shows").append(visibleHouseholds()).append('\n');
    return table.toString();
  }

  /** Other people of one household whose records have a phone, e-mail or address in common. */
  private String visibleHouseholds() {
    return those(one -> one.kind().truth() == Truth.SAME_HOUSEHOLD && one.left().isDetailShared())
        .verdicts();
  }

  private String corruptions() {
    StringBuilder table =
        new StringBuilder(VERDICTS.formatted("percent of the clear pairs of one person with"));
    table.append("| nothing but layout").append(unharmed().verdicts()).append('\n');
    for (Corruption corruption : Corruption.ALL) {
      Tally tally = those(one -> isOneWith(one, corruption));
      table.append("| `").append(corruption).append('`').append(tally.verdicts()).append('\n');
    }
    return table.toString();
  }

  private Tally unharmed() {
    return those(one -> one.isOnePerson() && one.isClear() && one.corruptions().isEmpty());
  }

  private static boolean isOneWith(Judged one, Corruption corruption) {
    return one.isOnePerson() && one.isClear() && one.corruptions().contains(corruption);
  }
}
