package withers.codec.finding;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tools.jackson.core.JsonGenerator;
import withers.finding.Band;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.Life;
import withers.finding.NotJudged;
import withers.finding.RunResult;

/** A run in numbers, as JSON for scripts. */
public final class RunSummaryJson {
  private RunSummaryJson() {}

  /** One line: what was judged, how many findings of each kind and band, what became of them. */
  public static String write(RunResult run) {
    return JsonText.of(json -> write(run, json));
  }

  private static void write(RunResult run, JsonGenerator json) {
    json.writeStartObject();
    json.writeStringProperty("run", run.id());
    json.writeStringProperty("asOf", run.asOf().toString());
    run.knownBy().ifPresent(day -> json.writeStringProperty("knownBy", day.toString()));
    json.writeNumberProperty("animals", run.animals());
    kinds(run.findings(), json);
    json.writeNumberProperty("opened", run.opened().size());
    json.writeNumberProperty("stillOpen", run.stillOpen().size());
    json.writeNumberProperty("closed", run.closed().size());
    json.writeNumberProperty("settled", run.settled().size());
    json.writeNumberProperty("answered", count(run, Life.Stage.ANSWERED));
    json.writeNumberProperty("snoozed", count(run, Life.Stage.SNOOZED));
    json.writeNumberProperty("closedAfterAnswers", count(run, Life.Stage.CLOSED));
    notJudged(run.notJudged(), json);
    json.writeEndObject();
  }

  private static long count(RunResult run, Life.Stage stage) {
    return run.lives().stream().filter(life -> life.stage() == stage).count();
  }

  private static void kinds(List<Finding> findings, JsonGenerator json) {
    Map<FindingKind, Map<Band, Long>> counts = new EnumMap<>(FindingKind.class);
    for (Finding finding : findings) {
      counts
          .computeIfAbsent(finding.kind(), kind -> new EnumMap<>(Band.class))
          .merge(finding.priority().band(), 1L, Long::sum);
    }
    json.writeName("findings");
    json.writeStartObject();
    for (FindingKind kind : FindingKind.values()) {
      Map<Band, Long> ofKind = counts.getOrDefault(kind, Map.of());
      json.writeName(kind.word());
      json.writeStartObject();
      for (Band band : Band.values()) {
        json.writeNumberProperty(band.word(), ofKind.getOrDefault(band, 0L));
      }
      json.writeEndObject();
    }
    json.writeEndObject();
  }

  private static void notJudged(List<NotJudged> notJudged, JsonGenerator json) {
    Map<String, Map<String, Long>> counts =
        notJudged.stream()
            .collect(
                Collectors.groupingBy(
                    lack -> lack.registry().value(),
                    TreeMap::new,
                    Collectors.groupingBy(
                        lack -> Words.of(lack.reason()), TreeMap::new, Collectors.counting())));
    json.writeName("notJudged");
    json.writeStartObject();
    counts.forEach(
        (registry, reasons) -> {
          json.writeName(registry);
          json.writeStartObject();
          reasons.forEach(json::writeNumberProperty);
          json.writeEndObject();
        });
    json.writeEndObject();
  }
}
