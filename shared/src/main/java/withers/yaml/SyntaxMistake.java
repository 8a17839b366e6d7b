package withers.yaml;

import java.util.List;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/**
 * Says in plain words what the YAML parser stumbled over, and where. The parser's own messages
 * quote the file, which may hold people's details, so none of their text is passed on.
 */
final class SyntaxMistake {
  private record Explanation(String sign, boolean atContext, String message, String advice) {
    Explanation(String sign, String message, String advice) {
      this(sign, false, message, advice);
    }
  }

  private static final List<Explanation> EXPLANATIONS =
      List.of(
          new Explanation(
              "TAB",
              "Expected spaces at the start of a line, but found a tab",
              "indent with spaces only"),
          new Explanation(
              "cannot start any token",
              "Expected a value, but found a character that no plain value can start with",
              "put the value in quotes"),
          new Explanation(
              "mapping values are not allowed",
              "Expected one \"key: value\" on a line, but found a second colon or a line indented too far",
              "put a value that holds a colon in quotes, and line keys up"),
          new Explanation(
              "could not find expected ':'",
              true,
              "Expected \"key: value\", but found a line without a colon",
              "write a colon and a space after the key, and line keys up"),
          new Explanation(
              "escape", "Expected a known escape after \\, but found another", "use single quotes"),
          new Explanation(
              "quoted scalar",
              true,
              "Expected a closing quote, but found none",
              "close the quote that starts here"),
          new Explanation(
              "expected ',' or",
              true,
              "Expected a closing bracket, but found none",
              "close the bracket that starts here"),
          new Explanation(
              "expected <block end>",
              "Expected a line that lines up with those above it, but found another indentation",
              "give all keys of a map, and all dashes of a list, the same indentation"),
          new Explanation(
              "sequence entries are not allowed",
              "Expected a value, but found a dash",
              "start the list on the next line, or quote a text that starts with a dash"),
          new Explanation(
              "expected the node content",
              "Expected a value, but found a comma or bracket",
              "quote a text that starts with one"),
          new Explanation(
              "block scalar",
              true,
              "Expected a line break after | or >, but found text",
              "quote a text that starts with | or >"),
          new Explanation(
              "while scanning an alias",
              true,
              "Expected a value, but found an alias (*)",
              "quote a text that starts with *"),
          new Explanation(
              "while scanning an anchor",
              true,
              "Expected a value, but found an anchor (&)",
              "quote a text that starts with &"),
          new Explanation(
              "while scanning a tag",
              true,
              "Expected a value, but found a tag (!)",
              "quote a text that starts with !"));

  private SyntaxMistake() {}

  static ConfigProblem explain(String file, String text, YamlEngineException wrong) {
    if (wrong instanceof MarkedYamlEngineException marked) {
      return explain(file, marked);
    }
    if (wrong instanceof ReaderException reader) {
      Place place = placeOf(file, text, reader.getPosition());
      return new ConfigProblem(
          place, "", "Expected printable text, but found a control character", "remove it");
    }
    return unknown(Place.of(file));
  }

  private static ConfigProblem explain(String file, MarkedYamlEngineException wrong) {
    String words = wrong.getContext() + " " + wrong.getProblem();
    return EXPLANATIONS.stream()
        .filter(explanation -> words.contains(explanation.sign))
        .findFirst()
        .map(found -> problem(placeOf(file, wrong, found.atContext), found))
        .orElseGet(() -> unknown(placeOf(file, wrong, false)));
  }

  private static ConfigProblem problem(Place place, Explanation explanation) {
    return new ConfigProblem(place, "", explanation.message, explanation.advice);
  }

  private static ConfigProblem unknown(Place place) {
    return new ConfigProblem(
        place,
        "",
        "Expected YAML, but found something else",
        "check quotes, colons and indentation");
  }

  private static Place placeOf(String file, MarkedYamlEngineException wrong, boolean atContext) {
    return (atContext ? wrong.getContextMark().or(wrong::getProblemMark) : wrong.getProblemMark())
        .map(mark -> placeOf(file, mark))
        .orElseGet(() -> Place.of(file));
  }

  private static Place placeOf(String file, Mark mark) {
    return new Place(file, mark.getLine() + 1, mark.getColumn() + 1);
  }

  private static Place placeOf(String file, String text, int position) {
    String before = text.substring(0, Math.min(position, text.length()));
    int line = (int) before.chars().filter(c -> c == '\n').count() + 1;
    return new Place(file, line, before.length() - before.lastIndexOf('\n'));
  }
}
