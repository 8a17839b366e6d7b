package withers.codec.finding;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import withers.cases.CaseKey;
import withers.finding.Backlog;
import withers.finding.Finding;
import withers.finding.Life;
import withers.finding.NotJudged;
import withers.finding.OpenQuestion;
import withers.finding.RunResult;
import withers.packed.Common;
import withers.packed.Gathering;

/**
 * Reads one run. Of each list a few elements at a time are held as fields: all of them together
 * would take several times as much memory as the run.
 */
final class RunReader {
  private static final int FIRST_WITH_LISTING = 3;
  private static final int FIRST_WITH_QUESTIONS = 4;
  private static final int FIRST_WITH_SETTLED = 5;
  private static final int FIRST_WITH_LIVES = 6;

  private final Recurring recurring = new Recurring();
  private final Fields words = new Fields(recurring);
  private final Map<String, Part<?>> parts = new HashMap<>();
  private final Set<String> read = new HashSet<>();

  private final Part<Finding> findings = findings();
  private final Part<NotJudged> notJudged = part("notJudged", 1, RunReader::notJudged);
  private final Part<OpenQuestion> questions =
      part("questions", FIRST_WITH_QUESTIONS, FindingReader::question);
  private final Part<CaseKey> opened = part("opened", 1, RunReader::caseKey);
  private final Part<CaseKey> stillOpen = part("stillOpen", 1, RunReader::caseKey);
  private final Part<CaseKey> closed = part("closed", 1, RunReader::caseKey);
  private final Part<Backlog> backlogs = part("backlogs", FIRST_WITH_LISTING, RunReader::backlog);
  private final Part<CaseKey> aside = part("aside", FIRST_WITH_LISTING, RunReader::caseKey);
  private final Part<CaseKey> settled = part("settled", FIRST_WITH_SETTLED, RunReader::caseKey);
  private final Part<Life> lives = part("lives", FIRST_WITH_LIVES, LifeJson::read);

  /** One of the run's lists, and since which version there is such a one. */
  private record Part<T>(
      String name,
      int since,
      Function<Fields, T> reader,
      Consumer<T> taker,
      Supplier<List<T>> values) {

    void read(JsonParser json, Recurring recurring, Making making) {
      expect(JsonToken.START_ARRAY, json.currentToken());
      while (json.nextToken() != JsonToken.END_ARRAY) {
        Fields fields = Fields.read(json, recurring);
        making.add(() -> taker.accept(reader.apply(fields)));
      }
    }
  }

  private <T> Part<T> part(String name, int since, Function<Fields, T> reader) {
    List<T> values = new ArrayList<>();
    return part(new Part<>(name, since, reader, values::add, () -> values));
  }

  /** All that a run found is too much to be held as it is, only to be looked at now and then. */
  private Part<Finding> findings() {
    Gathering<Finding> values = new Gathering<>(new FindingPacking(), new Common());
    return part(new Part<>("findings", 1, FindingReader::read, values::add, values::list));
  }

  private <T> Part<T> part(Part<T> part) {
    parts.put(part.name(), part);
    return part;
  }

  /**
   * The run that a text holds, and nothing else.
   *
   * @throws IllegalArgumentException when it is none, or of a later version
   */
  RunResult read(JsonParser json) {
    try (Making making = new Making()) {
      expect(JsonToken.START_OBJECT, json.nextToken());
      while (json.nextToken() == JsonToken.PROPERTY_NAME) {
        readNext(json.currentName(), json, making);
      }
      making.finish();
    }
    if (json.nextToken() != null) {
      throw new IllegalArgumentException("Expected the end after a run, but found more");
    }
    return run(words);
  }

  /**
   * The day that a run judged, read from its beginning.
   *
   * @throws IllegalArgumentException when it is none
   */
  static LocalDate asOf(JsonParser json) {
    expect(JsonToken.START_OBJECT, json.nextToken());
    while (json.nextToken() == JsonToken.PROPERTY_NAME) {
      boolean isIt = json.currentName().equals("asOf");
      JsonToken value = json.nextToken();
      if (isIt) {
        expect(JsonToken.VALUE_STRING, value);
        return LocalDate.parse(json.getString());
      }
      json.skipChildren();
    }
    throw new IllegalArgumentException("Expected a day that is judged, but found none");
  }

  private void readNext(String name, JsonParser json, Making making) {
    json.nextToken();
    Part<?> part = parts.get(name);
    if (part == null) {
      words.readValue(name, json);
    } else if (read.add(name)) {
      part.read(json, recurring, making);
    } else {
      throw new IllegalArgumentException("Expected \"%s\" once, but found more".formatted(name));
    }
  }

  static void expect(JsonToken token, JsonToken found) {
    if (found != token) {
      throw new IllegalArgumentException("Expected %s, but found %s".formatted(token, found));
    }
  }

  private RunResult run(Fields run) {
    long version = run.number("version");
    requireKnown(version);
    return new RunResult(
        run.text("id"),
        run.day("asOf"),
        run.optionalDay("knownBy"),
        run.number("animals"),
        list(findings, version),
        list(notJudged, version),
        list(questions, version),
        list(opened, version),
        list(stillOpen, version),
        list(closed, version),
        list(backlogs, version),
        list(aside, version),
        list(settled, version),
        list(lives, version));
  }

  static void requireKnown(long version) {
    if (version < 1 || version > RunJson.VERSION) {
      throw new IllegalArgumentException(
          "Expected version 1 to %d, but found %d".formatted(RunJson.VERSION, version));
    }
  }

  private <T> List<T> list(Part<T> part, long version) {
    if (version < part.since()) {
      return List.of();
    }
    if (!read.contains(part.name())) {
      throw new IllegalArgumentException("Expected a list \"%s\"".formatted(part.name()));
    }
    return part.values().get();
  }

  static NotJudged notJudged(Fields one) {
    return new NotJudged(
        one.chip("anchor"),
        one.organisation("registry"),
        Words.read(NotJudged.Reason.class, one.text("reason")));
  }

  private static Backlog backlog(Fields backlog) {
    return new Backlog(
        backlog.organisation("organisation"),
        backlog.day("since"),
        backlog.each("followUps", RunReader::caseKey),
        backlog.each("waiting", RunReader::caseKey));
  }

  static CaseKey caseKey(Fields key) {
    return key.followUp(
        new CaseKey(
            key.one(key.text("rule")),
            FindingReader.anchor(key),
            key.organisation("actor"),
            key.one(key.text("recordKey"))));
  }
}
