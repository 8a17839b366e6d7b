package withers.codec.finding;

import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import java.util.function.Function;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.core.exc.JacksonIOException;
import withers.cases.CaseKey;
import withers.finding.Backlog;
import withers.finding.Band;
import withers.finding.Finding;
import withers.finding.NotJudged;
import withers.finding.RunOutline;
import withers.finding.RunResult;
import withers.log.LogDamagedException;

/**
 * The whole result of a run as JSON, with contact references, but without people's details. Reading
 * what was written gives an equal result.
 */
public final class RunJson {

  /**
   * Version 1 knew no record without a number, and before version 3 no supply was told of, no
   * organisation had a backlog and every list showed all; before version 4 nothing was asked of
   * humans, before version 5 nobody had settled anything, and before version 6 nobody had answered.
   * What they wrote is read as it is.
   */
  static final int VERSION = 6;

  private RunJson() {}

  /**
   * Writes a run as UTF-8, some findings at a time, and leaves the stream open.
   *
   * @param run its findings are safe for several threads
   * @return the run in numbers
   * @throws UncheckedIOException when the stream fails
   */
  public static RunOutline write(RunResult run, OutputStream out, Pieces pieces) {
    Map<Band, Long> counts = new ConcurrentHashMap<>();
    JsonText.line(
        out,
        json -> {
          writeHead(run, json);
          json.writeArrayPropertyStart("findings");
          JsonText.elements(json, out, run.findings(), pieces, counted(counts));
          json.writeEndArray();
          writeRest(run, json);
        });
    return RunOutline.of(run, counts);
  }

  private static Function<JsonGenerator, Consumer<Finding>> counted(Map<Band, Long> counts) {
    return json -> {
      FindingJson whole = new FindingJson(json, true);
      return finding -> {
        whole.write(finding);
        counts.merge(finding.priority().band(), 1L, Long::sum);
      };
    };
  }

  private static void writeHead(RunResult run, JsonGenerator json) {
    FindingJson whole = new FindingJson(json, true);
    json.writeStartObject();
    json.writeNumberProperty("version", VERSION);
    whole.text("id", run.id());
    whole.text("asOf", run.asOf().toString());
    run.knownBy().ifPresent(day -> whole.text("knownBy", day.toString()));
    json.writeNumberProperty("animals", run.animals());
  }

  private static void writeRest(RunResult run, JsonGenerator json) {
    FindingJson whole = new FindingJson(json, true);
    whole.each("notJudged", run.notJudged(), one -> notJudged(one, whole));
    whole.each("questions", run.questions(), whole::question);
    whole.each("opened", run.opened(), key -> caseKey(key, whole));
    whole.each("stillOpen", run.stillOpen(), key -> caseKey(key, whole));
    whole.each("closed", run.closed(), key -> caseKey(key, whole));
    whole.each("backlogs", run.backlogs(), backlog -> backlog(backlog, whole));
    whole.each("aside", run.aside(), key -> caseKey(key, whole));
    whole.each("settled", run.settled(), key -> caseKey(key, whole));
    whole.each("lives", run.lives(), life -> LifeJson.write(life, json, whole));
    json.writeEndObject();
  }

  static void notJudged(NotJudged one, FindingJson json) {
    json.text("anchor", one.anchor().display());
    json.text("registry", one.registry().value());
    json.text("reason", Words.of(one.reason()));
  }

  private static void backlog(Backlog backlog, FindingJson json) {
    json.text("organisation", backlog.organisation().value());
    json.text("since", backlog.since().toString());
    json.each("followUps", backlog.followUps(), key -> caseKey(key, json));
    json.each("waiting", backlog.waiting(), key -> caseKey(key, json));
  }

  static void caseKey(CaseKey key, FindingJson json) {
    json.text("rule", key.rule());
    json.anchor(key.anchor());
    json.text("actor", key.actor().value());
    json.text("recordKey", key.recordKey());
  }

  /**
   * Reads what {@link #write} wrote, finding by finding, to its end.
   *
   * @throws LogDamagedException when the text is anything else, or of a later version
   * @throws UncheckedIOException when the stream fails
   */
  public static RunResult read(InputStream in) {
    return reading(in, JsonText::quickParser, json -> new RunReader().read(json));
  }

  /**
   * Reads the numbers of what {@link #write} wrote, and makes nothing of the rest.
   *
   * @throws LogDamagedException when the text is anything else, or of a later version
   * @throws UncheckedIOException when the stream fails
   */
  public static RunOutline readOutline(InputStream in) {
    return reading(in, JsonText::parser, json -> new OutlineReader(json).read());
  }

  /**
   * Reads the day that was judged, which stands before all lists, and nothing after it.
   *
   * @throws LogDamagedException when the text begins otherwise than a run
   * @throws UncheckedIOException when the stream fails
   */
  public static LocalDate readAsOf(InputStream in) {
    return reading(in, JsonText::parser, RunReader::asOf);
  }

  private static <T> T reading(
      InputStream in, Function<InputStream, JsonParser> parser, Function<JsonParser, T> read) {
    try (JsonParser json = parser.apply(in)) {
      return read.apply(json);
    } catch (JacksonIOException e) {
      throw new UncheckedIOException(e.getCause());
    } catch (JacksonException e) {
      throw new LogDamagedException("Expected the JSON of a run, but found other text", e);
    } catch (IllegalArgumentException | DateTimeException e) {
      throw new LogDamagedException("Expected the JSON of a run, but found a value of none", e);
    }
  }
}
