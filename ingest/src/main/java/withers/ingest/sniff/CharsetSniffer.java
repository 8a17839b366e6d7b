package withers.ingest.sniff;

import com.ibm.icu.text.CharsetDetector;
import com.ibm.icu.text.CharsetMatch;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Finds the character set of bytes: by a byte order mark, by the pattern of NUL bytes, as UTF-8
 * (which other text hardly ever is by chance), and at last by the detector of ICU. Its confidence
 * is ICU's own, lowered where there is little to go by; a reading that makes no sensible text is
 * left out, and of several that read the same, all but the first.
 */
public final class CharsetSniffer {

  /** From this confidence on, and well ahead of the others, a guess of ICU is taken. */
  public static final int TAKEN_FROM = 40;

  private static final int LOWEST = 1;
  private static final int IDLE = 10;

  /** Bytes beyond ASCII that make a guess count in full; our judgement. */
  private static final int ENOUGH = 12;

  /** Windows' sets hold all of these as text, and the characters that Windows added. */
  private static final Map<String, String> WIDER =
      Map.of("ISO-8859-1", "windows-1252", "ISO-8859-9", "windows-1254");

  private CharsetSniffer() {}

  /**
   * What the bytes may be.
   *
   * @param sample from the start of a file; it may be cut within a character
   */
  public static Finding<Charset> find(byte[] sample) {
    return Finding.firstOf(
        List.of(
            () -> mark(sample), () -> nuls(sample), () -> utf8(sample), () -> detected(sample)));
  }

  /** By the byte order mark. */
  public static Finding<Charset> mark(byte[] bytes) {
    if (startsWith(bytes, 0xEF, 0xBB, 0xBF)) {
      return marked(StandardCharsets.UTF_8);
    }
    if (startsWith(bytes, 0xFF, 0xFE, 0, 0)) {
      return marked(Charset.forName("UTF-32LE"));
    }
    if (startsWith(bytes, 0xFF, 0xFE)) {
      return marked(StandardCharsets.UTF_16LE);
    }
    if (startsWith(bytes, 0xFE, 0xFF)) {
      return marked(StandardCharsets.UTF_16BE);
    }
    return startsWith(bytes, 0, 0, 0xFE, 0xFF)
        ? marked(Charset.forName("UTF-32BE"))
        : Finding.nothing();
  }

  private static Finding<Charset> marked(Charset charset) {
    return Finding.certain(charset, "it starts with a byte order mark");
  }

  private static boolean startsWith(byte[] bytes, int... start) {
    for (int i = 0; i < start.length; i++) {
      if (i >= bytes.length || (bytes[i] & 0xFF) != start[i]) {
        return false;
      }
    }
    return true;
  }

  /**
   * UTF-16 without a mark: most of the digits and delimiters of an export have a NUL beside them.
   */
  public static Finding<Charset> nuls(byte[] bytes) {
    int pairs = bytes.length / 2;
    int high = 0;
    int low = 0;
    for (int i = 0; i + 1 < bytes.length; i += 2) {
      high += bytes[i] == 0 ? 1 : 0;
      low += bytes[i + 1] == 0 ? 1 : 0;
    }
    if (pairs > 0 && low * 2 > pairs && high == 0) {
      return byNuls(StandardCharsets.UTF_16LE, low, pairs);
    }
    return pairs > 0 && high * 2 > pairs && low == 0
        ? byNuls(StandardCharsets.UTF_16BE, high, pairs)
        : Finding.nothing();
  }

  private static Finding<Charset> byNuls(Charset charset, int nuls, int pairs) {
    int share = (int) (nuls * 100L / pairs);
    String evidence =
        "%d %% of its pairs of bytes hold a NUL, all on the same side".formatted(share);
    return new Finding<>(List.of(new Guess<>(charset, Math.max(60, share), evidence)));
  }

  /** Whether it can be UTF-8. */
  public static Finding<Charset> utf8(byte[] bytes) {
    int end = endOfWholeCharacters(bytes);
    return decode(bytes, end, StandardCharsets.UTF_8).isPresent()
        ? Finding.certain(StandardCharsets.UTF_8, "every byte of it is UTF-8")
        : Finding.nothing();
  }

  /** Where a character that is cut off at the end of a sample of UTF-8 starts. */
  private static int endOfWholeCharacters(byte[] bytes) {
    int end = bytes.length;
    for (int back = 1; back <= 3 && back <= bytes.length; back++) {
      int b = bytes[bytes.length - back] & 0xFF;
      int length = b >= 0xF0 ? 4 : b >= 0xE0 ? 3 : b >= 0xC0 ? 2 : 1;
      if (b >= 0xC0) {
        return length > back ? bytes.length - back : end;
      }
      if (b < 0x80) {
        return end;
      }
    }
    return end;
  }

  /**
   * What ICU's detector takes it for.
   *
   * @param bytes whole lines, best those with bytes beyond ASCII
   */
  public static Finding<Charset> detected(byte[] bytes) {
    List<Guess<Charset>> guesses = new ArrayList<>();
    Set<String> readings = new HashSet<>();
    CharsetDetector detector = new CharsetDetector();
    detector.setText(bytes);
    int weight = Math.min(ENOUGH, beyondAscii(bytes));
    for (CharsetMatch match : detector.detectAll()) {
      int confidence = match.getConfidence() * weight / ENOUGH;
      charset(match)
          .filter(charset -> confidence >= LOWEST && !isIdle(charset, match))
          .filter(charset -> readsSensibly(bytes, charset, readings))
          .ifPresent(charset -> guesses.add(guess(charset, match, confidence)));
    }
    return new Finding<>(guesses);
  }

  /** ICU gives sets of several bytes to a character 10 when nothing speaks against them. */
  private static boolean isIdle(Charset charset, CharsetMatch match) {
    return match.getConfidence() <= IDLE && charset.newEncoder().maxBytesPerChar() > 1;
  }

  private static int beyondAscii(byte[] bytes) {
    int beyond = 0;
    for (byte b : bytes) {
      beyond += b < 0 ? 1 : 0;
    }
    return beyond;
  }

  private static Optional<Charset> charset(CharsetMatch match) {
    String name = WIDER.getOrDefault(match.getName(), match.getName());
    // Wide sets show in their NULs, and were looked for there.
    return Optional.of(name)
        .filter(one -> !one.startsWith("UTF-"))
        .filter(Charset::isSupported)
        .map(Charset::forName);
  }

  private static boolean readsSensibly(byte[] bytes, Charset charset, Set<String> readings) {
    return decode(bytes, bytes.length, charset)
        .filter(Plausibility::isSensible)
        .filter(readings::add)
        .isPresent();
  }

  private static Guess<Charset> guess(Charset charset, CharsetMatch match, int confidence) {
    String language = match.getLanguage() == null ? "" : ", in the language " + match.getLanguage();
    return new Guess<>(
        charset,
        confidence,
        "ICU's detector gives it %d of 100%s".formatted(match.getConfidence(), language));
  }

  private static Optional<String> decode(byte[] bytes, int end, Charset charset) {
    try {
      // A decoder of its own: Charset.decode would replace what it can't read.
      return Optional.of(charset.newDecoder().decode(ByteBuffer.wrap(bytes, 0, end)).toString());
    } catch (CharacterCodingException no) {
      return Optional.empty();
    }
  }
}
