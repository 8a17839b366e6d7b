package withers.matching.form;

import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Names in Chinese characters and Hangul without a space: the family name is the first sign, or two
 * where it is a known double one or a name has four signs (general knowledge).
 */
final class EastAsian {
  private static final Set<String> DOUBLE =
      Set.of(
          "欧阳", "歐陽", "司马", "司馬", "上官", "诸葛", "諸葛", "东方", "東方", "皇甫", "尉迟", "公孙", "公孫", "慕容", "令狐",
          "司徒", "남궁", "황보", "제갈", "선우", "독고", "사공", "서문");

  private static final int LONGEST = 4;

  private EastAsian() {}

  static Optional<Draft> unspaced(List<Token> tokens) {
    if (tokens.size() != 1) {
      return Optional.empty();
    }
    String written = tokens.get(0).written();
    int length = written.codePointCount(0, written.length());
    boolean signs = written.codePoints().allMatch(EastAsian::isSign);
    return signs && length >= 2 && length <= LONGEST
        ? Optional.of(cut(written, length))
        : Optional.empty();
  }

  private static Draft cut(String written, int length) {
    boolean twofold = length > 2 && DOUBLE.contains(written.substring(0, 2)) || length == LONGEST;
    int end = written.offsetByCodePoints(0, twofold ? 2 : 1);
    List<Token> family = List.of(token(written.substring(0, end)));
    List<Token> given = List.of(token(written.substring(end)));
    return Draft.usual(new Parts(given, List.of(), family, ""));
  }

  private static Token token(String written) {
    return new Token(written, Token.folded(written), false);
  }

  private static boolean isSign(int c) {
    Character.UnicodeScript script = Character.UnicodeScript.of(c);
    return script == Character.UnicodeScript.HAN || script == Character.UnicodeScript.HANGUL;
  }
}
