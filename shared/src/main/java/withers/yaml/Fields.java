package withers.yaml;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;

/**
 * Reads the values of a map by their keys and notes every mistake instead of stopping at the first.
 *
 * <pre>{@code
 * Optional<Slice> slice = Fields.read(map, problems, fields ->
 *     new Slice(fields.text("name"), fields.choice("reach", Reach.class), fields.optionalDate("until")));
 * }</pre>
 *
 * <p>A getter of a required value that is missing or wrong notes that and returns a stand-in (empty
 * text, the first constant, a given value), so that the reading goes on; {@link #read} then returns
 * nothing. Keys that nobody asked for are mistakes too. A key without a value counts as absent. Not
 * safe for several threads.
 */
public final class Fields {
  private final YamlMap map;
  private final Problems problems;
  private final KeyCheck keys;
  private final NodeReader values;

  private Fields(YamlMap map, Problems problems) {
    this.map = map;
    this.problems = problems;
    this.keys = new KeyCheck(map, problems);
    this.values = new NodeReader(problems);
  }

  /** A reader of this map; call {@link #done} at the end, or use {@link #read}. */
  public static Fields of(YamlMap map, Problems problems) {
    return new Fields(map, problems);
  }

  /**
   * Reads a map whole.
   *
   * @param reader builds the result; an {@link IllegalArgumentException} from a constructor becomes
   *     a mistake
   * @return the result, or empty when a mistake was noted meanwhile
   */
  public static <T> Optional<T> read(YamlMap map, Problems problems, Function<Fields, T> reader) {
    int before = problems.count();
    Fields fields = of(map, problems);
    Optional<T> result = fields.attempt(reader, before);
    fields.done();
    return problems.count() == before ? result : Optional.empty();
  }

  private <T> Optional<T> attempt(Function<Fields, T> reader, int before) {
    try {
      return Optional.of(reader.apply(this));
    } catch (IllegalArgumentException refused) {
      if (problems.count() == before && !keys.isIncomplete()) {
        values.refuse(map.place(), "", refused);
      }
      return Optional.empty();
    }
  }

  /** From now on no message about this map shows what is written in it: for people's details. */
  public Fields confidential() {
    keys.hideKeys();
    values.hideTexts();
    return this;
  }

  /** Notes keys that are missing and keys that nobody asked for. */
  public void done() {
    keys.finish();
  }

  /** Whether the key has a value. */
  public boolean has(String key) {
    return node(key).isPresent();
  }

  /** Where the key's value is, or the map when it has none. */
  public Place place(String key) {
    return map.get(key).map(YamlNode::place).orElse(map.place());
  }

  /** Where the map is. */
  public Place place() {
    return map.place();
  }

  /** Notes a mistake in the value of this key. */
  public void problem(String key, String message, String advice) {
    problems.add(place(key), key, message, advice);
  }

  /** The value as it stands in the file; empty when the key is absent or has no value. */
  public Optional<YamlNode> node(String key) {
    keys.asked(key);
    return map.get(key).filter(node -> !(node instanceof YamlText text && text.isEmpty()));
  }

  /** A required text; empty text stands in. */
  public String text(String key) {
    return value(key, Function.identity(), "");
  }

  public Optional<String> optionalText(String key) {
    return optionalValue(key, Function.identity());
  }

  /**
   * A required value made from text.
   *
   * @param reader may refuse the text with an {@link IllegalArgumentException} or {@link
   *     DateTimeException} whose message says what was expected and what was found
   * @param standIn returned when the value is missing or wrong
   */
  public <T> T value(String key, Function<String, T> reader, T standIn) {
    Optional<YamlNode> node = required(key);
    return node.flatMap(found -> values.single(key, found, reader)).orElse(standIn);
  }

  /** An optional value made from text; empty, too, when it is wrong. */
  public <T> Optional<T> optionalValue(String key, Function<String, T> reader) {
    return node(key).flatMap(found -> values.single(key, found, reader));
  }

  /**
   * A required choice among constants, written in lower case with dashes; the first constant stands
   * in.
   */
  public <E extends Enum<E>> E choice(String key, Class<E> type) {
    return value(key, text -> Choices.read(type, text), type.getEnumConstants()[0]);
  }

  /** An optional choice among constants, written in lower case with dashes. */
  public <E extends Enum<E>> E choice(String key, E fallback) {
    return optionalValue(key, text -> Choices.read(fallback.getDeclaringClass(), text))
        .orElse(fallback);
  }

  /** Choices among constants, as a list or a single one; empty when the key is absent. */
  public <E extends Enum<E>> List<E> choices(String key, Class<E> type) {
    return list(key, text -> Choices.read(type, text));
  }

  /** An optional whole number; the bounds are included. */
  public int wholeNumber(String key, int fallback, int least, int most) {
    return optionalValue(key, text -> Values.wholeNumber(text, least, most)).orElse(fallback);
  }

  /** An optional {@code yes} or {@code no}; {@code true} and {@code false} are understood. */
  public boolean yesNo(String key, boolean fallback) {
    return optionalValue(key, Values::yesNo).orElse(fallback);
  }

  /** A required date, {@code YYYY-MM-DD}; the first of January 1970 stands in. */
  public LocalDate date(String key) {
    return value(key, Values::date, LocalDate.EPOCH);
  }

  public Optional<LocalDate> optionalDate(String key) {
    return optionalValue(key, Values::date);
  }

  /** Notes a mistake when the key is absent or has no value. */
  public void require(String key) {
    required(key);
  }

  /** The texts of {@link #texts} with their places. */
  public List<YamlText> textNodes(String key) {
    return items(key).stream()
        .filter(YamlText.class::isInstance)
        .map(YamlText.class::cast)
        .filter(text -> !text.isEmpty())
        .toList();
  }

  /** A list of texts; a single text is a list of one; empty when the key is absent. */
  public List<String> texts(String key) {
    return list(key, Function.identity());
  }

  /**
   * A list of values made from texts; a single text is a list of one; items with a mistake are left
   * out.
   */
  public <T> List<T> list(String key, Function<String, T> reader) {
    return items(key).stream().flatMap(item -> values.single(key, item, reader).stream()).toList();
  }

  /** A list of maps, each read with {@link #read}; items with a mistake are left out. */
  public <T> List<T> maps(String key, Function<Fields, T> reader) {
    return items(key).stream().flatMap(item -> inner(key, item, reader).stream()).toList();
  }

  /** An optional map, read with {@link #read}; empty, too, when it has a mistake. */
  public <T> Optional<T> map(String key, Function<Fields, T> reader) {
    return node(key).flatMap(found -> inner(key, found, reader));
  }

  /** A required map, read with {@link #read}. */
  public <T> T map(String key, Function<Fields, T> reader, T standIn) {
    return required(key).flatMap(found -> inner(key, found, reader)).orElse(standIn);
  }

  /**
   * A map with free keys and single values, in the order of the file; empty when the key is absent.
   */
  public Map<String, String> textMap(String key) {
    Map<String, String> texts = new LinkedHashMap<>();
    node(key).flatMap(node -> values.map(key, node)).map(YamlMap::entries).stream()
        .flatMap(List::stream)
        .forEach(
            entry ->
                values
                    .single(key, entry.value(), Function.<String>identity())
                    .ifPresent(text -> texts.put(entry.key().text(), text)));
    return texts;
  }

  /**
   * A map with free keys whose values are maps, each read with {@link #read}, in the order of the
   * file; empty when the key is absent. Values with a mistake are left out.
   */
  public <T> Map<String, T> mapOfMaps(String key, Function<Fields, T> reader) {
    return mapOfMaps(key, (name, fields) -> reader.apply(fields));
  }

  /** As {@link #mapOfMaps(String, Function)}, with the free key of each map. */
  public <T> Map<String, T> mapOfMaps(String key, BiFunction<String, Fields, T> reader) {
    Map<String, T> read = new LinkedHashMap<>();
    node(key).flatMap(node -> values.map(key, node)).map(YamlMap::entries).stream()
        .flatMap(List::stream)
        .forEach(
            entry -> {
              String name = entry.key().text();
              inner(name, entry.value(), fields -> reader.apply(name, fields))
                  .ifPresent(one -> read.put(name, one));
            });
    return read;
  }

  private Optional<YamlNode> required(String key) {
    Optional<YamlNode> node = node(key);
    if (node.isEmpty()) {
      keys.missed(key);
    }
    return node;
  }

  private List<YamlNode> items(String key) {
    return node(key)
        .map(node -> node instanceof YamlList list ? list.items() : List.of(node))
        .orElse(List.of());
  }

  private <T> Optional<T> inner(String key, YamlNode node, Function<Fields, T> reader) {
    return values.map(key, node).flatMap(inner -> read(inner, problems, reader));
  }
}
