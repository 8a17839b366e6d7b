package withers.ingest.inspect;

import withers.ingest.profile.ColumnName;
import withers.ingest.profile.PartyName;

/**
 * What numbers and codes say for other columns: one client has one phone, one area one town. The
 * figures are our judgement, common practice without a source.
 */
record IdPairs(Relations relations) {

  /** Ranges run from a lower number to a higher one, in every row. */
  double range(Field f, Column a, Field g, Column b) {
    if (!f.is(ColumnName.FIRST) || !g.is(ColumnName.LAST)) {
      return 0;
    }
    int rows = 0;
    int rising = 0;
    for (int row = 0; row < a.rows(); row++) {
      String one = a.cell(row);
      String two = b.cell(row);
      if (a.isFilled(row) && b.isFilled(row) && one.length() == two.length()) {
        rows++;
        rising += one.compareTo(two) < 0 && shareAStart(one, two) ? 1 : 0;
      }
    }
    return rows > 0 && rising >= 0.95 * rows ? 10 : -20;
  }

  private static boolean shareAStart(String one, String two) {
    return one.regionMatches(0, two, 0, one.length() / 2);
  }

  double ids(Field f, Column a, Field g, Column b) {
    boolean sameParty = f.party().isPresent() && f.party().equals(g.party());
    if (f.use() == Use.PARTY_ID && sameParty) {
      boolean tells =
          g.use() == Use.PHONE || g.use() == Use.EMAIL || g.use().isName() && g.copy() == 0;
      return tells ? dependence(relations.dependence(a, b)) : 0;
    }
    if (f.use() == Use.ANIMAL_ID && g.is(ColumnName.CHIP)) {
      return 2 * dependence(relations.dependence(a, b));
    }
    if (f.use() == Use.POSTCODE && g.use() == Use.TOWN && sameParty) {
      Relations.Dependence area = relations.areaDependence(a, b);
      return area.repeats() < 10 ? 0 : area.kept() > 0.8 ? 6 : area.kept() > 0.5 ? 2 : -3;
    }
    return 0;
  }

  private static double dependence(Relations.Dependence found) {
    if (found.repeats() < 4) {
      return 0;
    }
    return found.kept() >= 0.85 ? 2 : found.kept() >= 0.5 ? 0 : -4;
  }

  /** An account's name is mostly that of the keeper who is registered by it. */
  double account(Field f, Column a, Field g, Column b) {
    boolean asks =
        f.use() == Use.ACCOUNT
            && g.isOf(PartyName.PRIMARY)
            && (g.use() == Use.FULL_NAME || g.use() == Use.FAMILY_NAME);
    return asks && !a.isEmpty() && relations.same(a, b) >= 0.5 ? 4 : 0;
  }
}
