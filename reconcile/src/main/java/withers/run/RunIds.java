package withers.run;

import withers.codec.finding.CanonicalFindings;
import withers.history.Scope;

/** Names runs: by the day judged, by what was known if that is limited, and by what was found. */
final class RunIds {
  private static final int DIGITS = 12;

  private RunIds() {}

  /** Equal findings of one day have one name: the same run again is the same run. */
  static String of(Scope scope, CanonicalFindings findings) {
    String known = scope.knownBy().map(day -> "-known-by-" + day).orElse("");
    return scope.asOf() + known + "-" + findings.sha256().substring(0, DIGITS);
  }
}
