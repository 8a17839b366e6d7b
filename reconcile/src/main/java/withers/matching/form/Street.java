package withers.matching.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * The name of a street.
 *
 * @param core its words without the kind and without small words; all of them if none is left
 * @param kind the kind of street, or empty
 */
record Street(List<String> core, String kind) {
  private static final int SHORTEST_STEM = 3;

  /** {@code de l'Église}. */
  private static final Pattern ELISION = Pattern.compile("[dDlL]['’](?=\\p{L}{2})");

  static final Street NONE = new Street(List.of(), "");

  static Street of(List<Token> tokens) {
    List<String> words = new ArrayList<>();
    List<String> kinds = new ArrayList<>();
    for (int i = 0; i < tokens.size(); i++) {
      add(tokens.get(i), isKindPossible(tokens, i), words, kinds);
    }
    String kind = kinds.isEmpty() ? "" : kinds.get(kinds.size() - 1);
    return words.isEmpty() ? whole(tokens, kind) : new Street(List.copyOf(words), kind);
  }

  /** A street that is nothing but a kind or small words: {@code The Avenue}. */
  private static Street whole(List<Token> tokens, String kind) {
    List<String> all = tokens.stream().map(token -> key(token.text())).toList();
    return new Street(kind.isEmpty() ? all : List.of(kind), kind);
  }

  /** The kind stands first or last: {@code Saint Street}, {@code Rua do Largo}. */
  private static boolean isKindPossible(List<Token> tokens, int at) {
    int last = tokens.size() - 1;
    boolean saint = at < last && tokens.get(at).text().equals("st");
    boolean end = at == 0 || at == last || at == last - 1 && isDirection(tokens.get(last));
    return !saint && (end || isSmallBefore(tokens, at));
  }

  private static boolean isDirection(Token token) {
    return AddressWords.LONG.containsKey(token.text());
  }

  private static boolean isSmallBefore(List<Token> tokens, int at) {
    return at == 1 && AddressWords.SMALL.has(tokens.get(0).text());
  }

  private static void add(Token token, boolean kind, List<String> words, List<String> kinds) {
    String key = key(isElided(token.written()) ? token.text().substring(1) : token.text());
    String head = AddressWords.KINDS.getOrDefault(key, "");
    if (kind && !head.isEmpty()) {
      kinds.add(head);
    } else if (!AddressWords.SMALL.has(key) || AddressWords.LONG.containsKey(key)) {
      addCore(token, AddressWords.LONG.getOrDefault(key, key), words, kinds);
    }
  }

  private static boolean isElided(String written) {
    return "dDlL".indexOf(written.charAt(0)) >= 0 && ELISION.matcher(written).lookingAt();
  }

  /** {@code Hafenstraße} and {@code Hafenstr.} end with their kind. */
  private static void addCore(Token token, String key, List<String> words, List<String> kinds) {
    Map.Entry<String, String> ending = ending(key, AddressWords.ENDINGS);
    if (ending == null && token.endsWithFullStop()) {
      ending = ending(key, AddressWords.ENDINGS_WITH_STOP);
    }
    if (ending == null) {
      words.add(key);
    } else {
      words.add(stem(key.substring(0, key.length() - ending.getKey().length())));
      kinds.add(ending.getValue());
    }
  }

  private static Map.@org.jspecify.annotations.Nullable Entry<String, String> ending(
      String key, Map<String, String> endings) {
    for (Map.Entry<String, String> ending : endings.entrySet()) {
      if (key.endsWith(ending.getKey())
          && key.length() - ending.getKey().length() >= SHORTEST_STEM) {
        return ending;
      }
    }
    return null;
  }

  /** Without the s that joins two words: {@code Bahnhofsweg}, {@code Bahnhofweg}. */
  private static String stem(String stem) {
    return stem.length() > SHORTEST_STEM && stem.endsWith("s") && !stem.endsWith("ss")
        ? stem.substring(0, stem.length() - 1)
        : stem;
  }

  private static String key(String text) {
    return Spelling.withoutUmlauts(text);
  }

  boolean isEmpty() {
    return core.isEmpty();
  }

  String name() {
    return String.join(" ", core);
  }

  String withKind() {
    return kind.isEmpty() || core.equals(List.of(kind)) ? name() : name() + " " + kind;
  }
}
