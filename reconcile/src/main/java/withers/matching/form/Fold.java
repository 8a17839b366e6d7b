package withers.matching.form;

import static java.util.Map.entry;

import com.ibm.icu.text.Transliterator;
import java.text.Normalizer;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import withers.contact.Ascii;

/**
 * Folds text to small Latin letters without accents, whatever script it is written in (the
 * transforms of Unicode's CLDR, as ICU brings them). What no transform knows stays as it is. Safe
 * for several threads.
 */
final class Fold {
  /** Some 150 bytes each. */
  private static final int MOST_KEPT = 50_000;

  /** Transforms cost more than all the rest of a word. */
  private static final Remembered<String, String> WORDS =
      new Remembered<>(MOST_KEPT, Fold::transformed);

  /** Those of our own lists: the transforms take longer to load than a short command may run. */
  private static final Map<String, String> OF_LISTS =
      WordFile.FOLDED_WORDS.lines().stream()
          .collect(
              Collectors.toUnmodifiableMap(
                  line -> line.get(0), line -> String.join("", line.subList(1, line.size()))));

  private static final char FIRST_NOT_OF_ASCII = 0x80;

  /** Unicode's block "Combining Diacritical Marks". */
  private static final char FIRST_ACCENT = 0x300;

  private static final char LAST_ACCENT = 0x36f;

  /** Letters of European languages that no accent makes of others. */
  private static final Map<Character, String> LETTERS =
      Map.ofEntries(
          entry('ß', "ss"),
          entry('Æ', "AE"),
          entry('æ', "ae"),
          entry('Ð', "D"),
          entry('ð', "d"),
          entry('Ø', "O"),
          entry('ø', "o"),
          entry('Þ', "TH"),
          entry('þ', "th"),
          entry('Đ', "D"),
          entry('đ', "d"),
          entry('Ħ', "H"),
          entry('ħ', "h"),
          entry('ı', "i"),
          entry('Ł', "L"),
          entry('ł', "l"),
          entry('Œ', "OE"),
          entry('œ', "oe"));

  private Fold() {}

  /** The folded text, still with its spaces and punctuation. */
  static String of(String text) {
    return Ascii.isAscii(text) ? text.toLowerCase(Locale.ROOT) : latin(text);
  }

  /** The letters and digits of a word, folded. */
  static String word(String written) {
    if (Ascii.isAscii(written)) {
      return asciiWord(written);
    }
    String known = OF_LISTS.get(written);
    return known == null ? WORDS.of(written) : known;
  }

  /** The same as {@link #word}, by the transforms alone. */
  static String transformed(String written) {
    return lettersAndDigits(of(written));
  }

  private static String asciiWord(String written) {
    StringBuilder word = new StringBuilder(written.length());
    for (int i = 0; i < written.length(); i++) {
      char c = written.charAt(i);
      if (isAsciiOfWord(c)) {
        word.append(Character.toLowerCase(c));
      }
    }
    return word.toString();
  }

  /** A letter or a digit of ASCII, as most characters of most texts are. */
  static boolean isAsciiOfWord(char c) {
    return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9';
  }

  private static String latin(String text) {
    String composed = Normalizer.normalize(text, Normalizer.Form.NFKC);
    return withoutAccents(composed)
        .orElseGet(() -> Script.of(composed).transform(composed))
        .toLowerCase(Locale.ROOT);
  }

  /**
   * A text of ASCII and of {@link #LETTERS} but for accents, without them, as the transform of
   * Latin letters leaves it: most names need no more, and the transforms take longer to load than a
   * short command may run. Empty for any other text.
   */
  static Optional<String> withoutAccents(String text) {
    StringBuilder bare = new StringBuilder(text.length());
    boolean isLetter = false;
    for (char c : Normalizer.normalize(text, Normalizer.Form.NFD).toCharArray()) {
      String letter = LETTERS.get(c);
      if (letter != null) {
        bare.append(letter);
        isLetter = true;
      } else if (c < FIRST_NOT_OF_ASCII) {
        bare.append(c);
        isLetter = c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z';
      } else if (!isLetter || c < FIRST_ACCENT || c > LAST_ACCENT) {
        return Optional.empty();
      }
    }
    return Optional.of(bare.toString());
  }

  /** The letters and digits of a folded text, and marks that belong to a script's spelling. */
  static String lettersAndDigits(String folded) {
    StringBuilder kept = new StringBuilder(folded.length());
    folded.codePoints().filter(Fold::isOfWord).forEach(kept::appendCodePoint);
    return kept.toString();
  }

  static boolean isOfWord(int c) {
    int type = Character.getType(c);
    return Character.isLetterOrDigit(c) && !isSpacingModifier(c) || isMarkOrNumber(type);
  }

  /** Unicode's block of that name: what transforms leave of glottal stops and soft signs. */
  private static boolean isSpacingModifier(int c) {
    return c >= 0x2b0 && c <= 0x2ff;
  }

  private static boolean isMarkOrNumber(int type) {
    return type == Character.NON_SPACING_MARK
        || type == Character.COMBINING_SPACING_MARK
        || type == Character.ENCLOSING_MARK
        || type == Character.LETTER_NUMBER
        || type == Character.OTHER_NUMBER;
  }

  /** Scripts for which a transform closer to how people spell their names is at hand. */
  private enum Script {
    LATIN("Latin-ASCII"),
    RUSSIAN("Russian-Latin/BGN; Latin-ASCII"),
    UKRAINIAN("Ukrainian-Latin/BGN; Latin-ASCII"),
    GREEK("Greek-Latin/UNGEGN; Latin-ASCII"),
    OTHER("Any-Latin; Latin-ASCII");

    private static final String OF_UKRAINE = "іїєґІЇЄҐ";

    /** Each loaded with the first text that needs it, not before. */
    private static final Map<Script, Transliterator> LOADED = new ConcurrentHashMap<>();

    private final String transform;

    Script(String transform) {
      this.transform = transform;
    }

    String transform(String text) {
      return LOADED
          .computeIfAbsent(this, one -> Transliterator.getInstance(one.transform))
          .transliterate(text);
    }

    static Script of(String text) {
      Script script = LATIN;
      for (int i = 0; i < text.length(); i++) {
        Script ofLetter = of(text.charAt(i));
        script = ofLetter.compareTo(script) > 0 ? ofLetter : script;
      }
      return script;
    }

    private static Script of(char letter) {
      Character.UnicodeScript script = Character.UnicodeScript.of(letter);
      return switch (script) {
        case LATIN, COMMON, INHERITED, UNKNOWN -> LATIN;
        case GREEK -> GREEK;
        case CYRILLIC -> OF_UKRAINE.indexOf(letter) >= 0 ? UKRAINIAN : RUSSIAN;
        default -> OTHER;
      };
    }
  }
}
