package withers.answers;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import withers.cases.Channel;
import withers.cases.Outcome;

/**
 * The words of a list's sheet in one language. They are compared without regard to case, white
 * space, and an apostrophe that guards a cell. Safe for several threads.
 */
public final class SheetWords {

  private static final String BUNDLE = "withers.answers.sheet";
  private static final Pattern SPACE = Pattern.compile("\\s+");

  private final ResourceBundle bundle;

  /** By their plain headings: every file that comes is asked whether it has some of these. */
  private final Map<String, AnswerColumn> columns = new HashMap<>();

  private SheetWords(ResourceBundle bundle) {
    this.bundle = bundle;
    for (AnswerColumn column : AnswerColumn.values()) {
      columns.putIfAbsent(plain(heading(column)), column);
    }
  }

  /** The words for a locale: in its language when there is a translation, else in English. */
  public static SheetWords in(Locale locale) {
    return new SheetWords(
        ResourceBundle.getBundle(
            BUNDLE,
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES)));
  }

  /** The words that sheets may have been written with: a locale's, and English ones. */
  public static List<SheetWords> of(Locale locale) {
    return List.of(in(locale), in(Locale.ROOT));
  }

  /** The heading of a column. */
  public String heading(AnswerColumn column) {
    return bundle.getString("column." + name(column));
  }

  /** How an outcome is told. */
  public String outcome(Outcome outcome) {
    return bundle.getString("outcome." + name(outcome));
  }

  /** How a way to reach a client is told. */
  public String channel(Channel channel) {
    return bundle.getString("channel." + name(channel));
  }

  /** The column with this heading. */
  public Optional<AnswerColumn> column(String heading) {
    return Optional.ofNullable(columns.get(plain(heading)));
  }

  /** The outcome that a cell tells. */
  public Optional<Outcome> outcomeOf(String cell) {
    return Stream.of(Outcome.values()).filter(one -> isSame(cell, outcome(one))).findFirst();
  }

  /** The way to reach a client that a cell tells. */
  public Optional<Channel> channelOf(String cell) {
    return Stream.of(Channel.values()).filter(one -> isSame(cell, channel(one))).findFirst();
  }

  /** The outcomes in the order in which a reader chooses from them. */
  public List<String> outcomes() {
    Stream<Outcome> lastFirst =
        Arrays.stream(Outcome.values()).sorted(java.util.Comparator.reverseOrder());
    return lastFirst.map(this::outcome).toList();
  }

  /** The ways to reach a client, in order. */
  public List<String> channels() {
    return Stream.of(Channel.values()).map(this::channel).toList();
  }

  private static String name(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static boolean isSame(String cell, String word) {
    return plain(cell).equals(plain(word));
  }

  private static String plain(String text) {
    String plain = SPACE.matcher(text.strip()).replaceAll(" ").toLowerCase(Locale.ROOT);
    return plain.startsWith("'") ? plain.substring(1) : plain;
  }
}
