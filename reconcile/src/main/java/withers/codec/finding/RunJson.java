package withers.codec.finding;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.JsonNode;
import withers.cases.CaseKey;
import withers.chip.ChipNumber;
import withers.finding.Backlog;
import withers.finding.NotJudged;
import withers.finding.RunResult;
import withers.id.OrganisationId;
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

  private static final int FIRST_WITH_LISTING = 3;
  private static final int FIRST_WITH_QUESTIONS = 4;
  private static final int FIRST_WITH_SETTLED = 5;
  private static final int FIRST_WITH_LIVES = 6;

  private RunJson() {}

  public static String write(RunResult run) {
    return JsonText.of(json -> write(run, json)) + "\n";
  }

  private static void write(RunResult run, JsonGenerator json) {
    FindingJson whole = new FindingJson(json, true);
    json.writeStartObject();
    json.writeNumberProperty("version", VERSION);
    whole.text("id", run.id());
    whole.text("asOf", run.asOf().toString());
    run.knownBy().ifPresent(day -> whole.text("knownBy", day.toString()));
    json.writeNumberProperty("animals", run.animals());
    json.writeArrayPropertyStart("findings");
    run.findings().forEach(whole::write);
    json.writeEndArray();
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

  private static void notJudged(NotJudged one, FindingJson json) {
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
   * Reads what {@link #write} wrote.
   *
   * @throws LogDamagedException when the text is anything else, or of a later version
   */
  public static RunResult read(String text) {
    try {
      return run(new Fields(JsonText.read(text)));
    } catch (JacksonException e) {
      throw new LogDamagedException("Expected the JSON of a run, but found other text", e);
    } catch (IllegalArgumentException | DateTimeException e) {
      throw new LogDamagedException("Expected the JSON of a run, but found a value of none", e);
    }
  }

  private static RunResult run(Fields run) {
    if (run.number("version") < 1 || run.number("version") > VERSION) {
      throw new IllegalArgumentException(
          "Expected version 1 to %d, but found %d".formatted(VERSION, run.number("version")));
    }
    boolean tellsListing = run.number("version") >= FIRST_WITH_LISTING;
    return new RunResult(
        run.text("id"),
        run.day("asOf"),
        run.optionalText("knownBy").map(LocalDate::parse),
        run.number("animals"),
        run.each("findings", FindingReader::read),
        run.each("notJudged", RunJson::notJudged),
        run.number("version") >= FIRST_WITH_QUESTIONS
            ? run.each("questions", FindingReader::question)
            : List.of(),
        caseKeys(run, "opened"),
        caseKeys(run, "stillOpen"),
        caseKeys(run, "closed"),
        tellsListing ? run.each("backlogs", RunJson::backlog) : List.of(),
        tellsListing ? caseKeys(run, "aside") : List.of(),
        run.number("version") >= FIRST_WITH_SETTLED ? caseKeys(run, "settled") : List.of(),
        run.number("version") >= FIRST_WITH_LIVES ? run.each("lives", LifeJson::read) : List.of());
  }

  private static NotJudged notJudged(Fields one) {
    return new NotJudged(
        ChipNumber.parse(one.text("anchor")),
        new OrganisationId(one.text("registry")),
        Words.read(NotJudged.Reason.class, one.text("reason")));
  }

  private static Backlog backlog(Fields backlog) {
    return new Backlog(
        new OrganisationId(backlog.text("organisation")),
        backlog.day("since"),
        caseKeys(backlog, "followUps"),
        caseKeys(backlog, "waiting"));
  }

  private static List<CaseKey> caseKeys(Fields run, String name) {
    return run.each(name, RunJson::caseKey);
  }

  static CaseKey caseKey(Fields key) {
    return new CaseKey(
        key.text("rule"),
        FindingReader.anchor(key),
        new OrganisationId(key.text("actor")),
        key.text("recordKey"));
  }

  /** The fields of a JSON object; a missing or misplaced one is an illegal argument. */
  record Fields(JsonNode node) {

    String text(String name) {
      return optionalText(name).orElseThrow(() -> missing(name, "a text"));
    }

    java.util.Optional<String> optionalText(String name) {
      return node.optional(name).map(JsonNode::stringValue);
    }

    LocalDate day(String name) {
      return LocalDate.parse(text(name));
    }

    long number(String name) {
      return node.optional(name).orElseThrow(() -> missing(name, "a number")).longValue();
    }

    Fields object(String name) {
      return new Fields(node.optional(name).orElseThrow(() -> missing(name, "an object")));
    }

    java.util.Optional<Fields> optionalObject(String name) {
      return node.optional(name).map(Fields::new);
    }

    <T> List<T> each(String name, java.util.function.Function<Fields, T> reader) {
      JsonNode list = node.optional(name).orElseThrow(() -> missing(name, "a list"));
      return list.valueStream().map(item -> reader.apply(new Fields(item))).toList();
    }

    boolean isTrue(String name) {
      return node.optional(name).orElseThrow(() -> missing(name, "true or false")).booleanValue();
    }

    java.util.Optional<LocalDate> optionalDay(String name) {
      return optionalText(name).map(LocalDate::parse);
    }

    List<String> texts(String name) {
      return each(name, item -> item.node.stringValue());
    }

    private static IllegalArgumentException missing(String name, String what) {
      return new IllegalArgumentException(
          "Expected %s in \"%s\", but found none".formatted(what, name));
    }
  }
}
