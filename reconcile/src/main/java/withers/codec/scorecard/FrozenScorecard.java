package withers.codec.scorecard;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.scorecard.Scorecard;

/**
 * A scorecard as it is kept, so that its figure can be audited: a line of JSON for the whole, with
 * what it rests on, and one for each patient, in order. Equal sets of exports and equal dates give
 * equal bytes.
 *
 * @param name for a file, without an ending: the day judged, and what tells one content from
 *     another
 * @param text the lines, each ended by a line feed
 */
public record FrozenScorecard(String name, String text) {
  private static final int DIGITS = 12;

  public static FrozenScorecard of(Scorecard card) {
    String whole =
        ScorecardJson.line(
            json -> {
              json.terms(card);
              json.figures(card);
              json.coverage(card);
            });
    Stream<String> patients =
        card.patients().stream().map(one -> ScorecardJson.line(json -> json.patient(one)));
    String text =
        Stream.concat(Stream.of(whole), patients)
            .map(line -> line + "\n")
            .collect(Collectors.joining());
    return new FrozenScorecard(card.scope().asOf() + "-" + sha256(text).substring(0, DIGITS), text);
  }

  /** SHA-256 (FIPS 180-4) of a text in UTF-8, as 64 hexadecimal digits. */
  private static String sha256(String text) {
    try {
      byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }
}
