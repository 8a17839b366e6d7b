package withers.reconcile.cli;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import withers.custody.Cast;
import withers.finding.Basis;
import withers.history.Scope;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.matching.Matcher;
import withers.matching.Parameters;
import withers.matching.ParametersWriter;
import withers.priority.Priorities;
import withers.registration.Registries;
import withers.rule.Rules;
import withers.workspace.EffectiveSettings;
import withers.workspace.Workspace;

/** What runs of a workspace are made with. */
record BasisOf(Workspace workspace) {

  /** The packages that judge: of the same exports and settings, they alone make a difference. */
  private static final List<Class<?>> JUDGES =
      List.of(Rules.class, Cast.class, Registries.class, Matcher.class, Priorities.class);

  /** What a run over this log is made with. */
  Basis at(LogSnapshot log, Scope scope) {
    Parameters parameters = MatchingFile.matcher(workspace).parameters();
    return new Basis(
        rules(),
        parameters.version(),
        CodeDigest.of(ParametersWriter.write(parameters, List.of())),
        NormaliserStamp.of(workspace.settings().phoneRegion()).orElse(""),
        CodeDigest.of(settings()),
        profiles(log, scope));
  }

  private static String rules() {
    try {
      return CodeDigest.of(JUDGES);
    } catch (IOException unreadable) {
      return "";
    }
  }

  /** What counts, wherever it is stated: moving a line in the file makes no other run. */
  private String settings() {
    String lines =
        EffectiveSettings.of(workspace).stream()
            .map(line -> line.key() + "=" + line.value())
            .collect(Collectors.joining("\n"));
    return lines + "\n" + workspace.directory().all();
  }

  private static List<Basis.Profile> profiles(LogSnapshot log, Scope scope) {
    Map<String, Basis.Profile> newest = new TreeMap<>();
    log.markers().stream()
        .filter(marker -> marker.source().isPresent() && scope.hears(marker.exportDate()))
        .filter(marker -> !marker.files().isEmpty())
        .forEach(marker -> newest.put(marker.chain().value(), profile(marker)));
    return List.copyOf(newest.values());
  }

  private static Basis.Profile profile(ImportMarker marker) {
    return new Basis.Profile(
        marker.chain().value(), marker.exportDate(), marker.files().get(0).profile());
  }
}
