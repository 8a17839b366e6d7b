package withers.ingest.profile;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import withers.chip.RangeNotation;
import withers.source.Coverage;
import withers.yaml.Fields;
import withers.yaml.Values;

/** Reads what a source can speak for, and what an import of it puts up with. */
final class CoverageReader {

  private static final int LONGEST_LAG = 366;
  private static final int LARGEST_FLOOR = 100_000_000;
  private static final int DEFAULT_REJECTS = 5;

  private CoverageReader() {}

  static CoverageRule nothingCovered() {
    return new CoverageRule(Coverage.Reach.ACCOUNT, List.of(), 0, Set.of());
  }

  static CoverageRule coverage(Fields fields) {
    return new CoverageRule(
        fields.choice("reach", Coverage.Reach.class),
        fields.list("ranges", RangeNotation::read),
        fields.wholeNumber("lag-days", 0, 0, LONGEST_LAG),
        new LinkedHashSet<>(fields.texts("filled")));
  }

  static Limits limits(Fields fields, ExtentRule extent) {
    int floor = extent.kind() == ExtentRule.Kind.FULL ? 1 : 0;
    return fields
        .map("limits", limits -> limits(limits, floor))
        .orElse(new Limits(DEFAULT_REJECTS, floor));
  }

  private static Limits limits(Fields fields, int defaultFloor) {
    return new Limits(
        fields.optionalValue("rejects", CoverageReader::percent).orElse(DEFAULT_REJECTS),
        fields.wholeNumber("floor", defaultFloor, 0, LARGEST_FLOOR));
  }

  private static int percent(String text) {
    String number = text.endsWith("%") ? text.substring(0, text.length() - 1).strip() : text;
    return Values.wholeNumber(number, 0, 100);
  }
}
