package withers.yaml;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.events.SequenceStartEvent;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/** Builds the tree of one file from the events of the YAML parser. */
final class TreeBuilder {
  private static final int DEEPEST = 30;

  private final String file;
  private final Problems problems;

  TreeBuilder(String file, Problems problems) {
    this.file = file;
    this.problems = problems;
  }

  /**
   * The top of the only document; empty when there is none or the file can't be read to its end.
   */
  Optional<YamlNode> build(String text) {
    Parse parser = new Parse(LoadSettings.builder().setCodePointLimit(YamlFiles.LARGEST).build());
    try {
      return document(parser.parseString(text).iterator());
    } catch (YamlEngineException wrong) {
      problems.add(SyntaxMistake.explain(file, text, wrong));
    } catch (Unbearable stop) {
      problems.add(stop.problem);
    }
    return Optional.empty();
  }

  private Optional<YamlNode> document(Iterator<Event> events) {
    Optional<YamlNode> top = Optional.empty();
    while (events.hasNext()) {
      Event event = events.next();
      if (event instanceof NodeEvent) {
        top = Optional.of(node(event, events, 0));
      } else if (event instanceof DocumentStartEvent && top.isPresent()) {
        throw unbearable(
            event, "Expected one document, but found a second one", "remove the \"---\"");
      }
    }
    return top;
  }

  private YamlNode node(Event event, Iterator<Event> events, int depth) {
    if (depth > DEEPEST) {
      throw unbearable(event, "Expected at most %d levels, but found more".formatted(DEEPEST), "");
    }
    refuseAnchor(event);
    return switch (event.getEventId()) {
      case Scalar -> text((ScalarEvent) event);
      case SequenceStart -> list((SequenceStartEvent) event, events, depth);
      case MappingStart -> map((MappingStartEvent) event, events, depth);
      default -> throw unbearable(event, "Expected a value, but found an alias (*)", WRITE_OUT);
    };
  }

  private static final String WRITE_OUT =
      "write the value out in each place, and quote a text that starts with & or *";

  private void refuseAnchor(Event event) {
    if (event instanceof NodeEvent node && node.getAnchor().isPresent() && isNotAlias(event)) {
      throw unbearable(event, "Expected a value, but found an anchor (&)", WRITE_OUT);
    }
  }

  private static boolean isNotAlias(Event event) {
    return event.getEventId() != Event.ID.Alias;
  }

  private YamlText text(ScalarEvent scalar) {
    refuseTag(scalar, scalar.getTag());
    String value = scalar.getValue();
    boolean nothing = scalar.isPlain() && (value.equals("~") || value.equals("null"));
    return new YamlText(place(scalar), nothing ? "" : value);
  }

  private YamlList list(SequenceStartEvent start, Iterator<Event> events, int depth) {
    refuseTag(start, start.getTag());
    List<YamlNode> items = new ArrayList<>();
    for (Event event = events.next();
        event.getEventId() != Event.ID.SequenceEnd;
        event = events.next()) {
      items.add(node(event, events, depth + 1));
    }
    return new YamlList(place(start), items);
  }

  private YamlMap map(MappingStartEvent start, Iterator<Event> events, int depth) {
    refuseTag(start, start.getTag());
    Map<String, YamlMap.Entry> entries = new LinkedHashMap<>();
    for (Event event = events.next();
        event.getEventId() != Event.ID.MappingEnd;
        event = events.next()) {
      YamlText key = key(event, events, depth);
      add(entries, new YamlMap.Entry(key, node(events.next(), events, depth + 1)));
    }
    return new YamlMap(place(start), List.copyOf(entries.values()));
  }

  private YamlText key(Event event, Iterator<Event> events, int depth) {
    YamlNode key = node(event, events, depth + 1);
    if (key instanceof YamlText text) {
      return text;
    }
    throw unbearable(
        event, "Expected a key, but found " + key.shape(), "quote a key that starts with [ or {");
  }

  private void add(Map<String, YamlMap.Entry> entries, YamlMap.Entry entry) {
    YamlMap.Entry earlier = entries.putIfAbsent(entry.key().text(), entry);
    if (earlier != null) {
      String key = entry.key().text();
      problems.add(
          entry.key().place(),
          key,
          "Expected \"%s\" once, but found it again".formatted(key),
          "it stands in line %d already".formatted(earlier.key().place().line()));
    }
  }

  private void refuseTag(Event event, Optional<String> tag) {
    if (tag.isPresent()) {
      throw unbearable(
          event, "Expected a value, but found a tag (!)", "quote a text that starts with !");
    }
  }

  private Place place(Event event) {
    return event
        .getStartMark()
        .map(mark -> new Place(file, mark.getLine() + 1, mark.getColumn() + 1))
        .orElseGet(() -> Place.of(file));
  }

  private Unbearable unbearable(Event event, String message, String advice) {
    return new Unbearable(new ConfigProblem(place(event), "", message, advice));
  }

  /** Ends the reading of a file whose rest would make no sense. */
  private static final class Unbearable extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final transient ConfigProblem problem;

    Unbearable(ConfigProblem problem) {
      super(problem.text(), null, false, false);
      this.problem = problem;
    }
  }
}
