package withers.matching.form;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import withers.contact.Contact;

/** Makes the normal form of contacts. Safe for several threads, and remembers what repeats. */
public final class NormalForms {

  /** The version of the normal form: it rises when any contact may read otherwise than before. */
  public static final int VERSION = 1;

  private static final String DIGEST = digestOfResources();

  private final NameReader names = new NameReader();
  private final PhoneReader phones;

  /**
   * @param region the country whose rules read a phone without a country code: ISO 3166-1 alpha-2,
   *     or {@code ZZ} for none
   */
  public NormalForms(String region) {
    phones = new PhoneReader(region);
  }

  public NormalForm of(Contact contact) {
    List<Token> whole = Token.of(contact.fullName());
    NameReader.Named named = names.read(contact, whole);
    return new NormalForm(
        named.people(),
        named.organisation(),
        wholeName(whole),
        read(contact.phones(), phones::read),
        read(contact.emails(), EmailReader::read),
        AddressReader.read(contact));
  }

  /**
   * What says whether two programs read contacts alike, the region left aside: the version, and a
   * digest of all that is known of words (SHA-256, in hexadecimal digits, the first sixteen).
   */
  public static String stamp() {
    return VERSION + "-" + DIGEST;
  }

  private static String digestOfResources() {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      for (WordFile file : WordFile.values()) {
        digest.update(file.bytes());
      }
      return HexFormat.of().formatHex(digest.digest()).substring(0, 16);
    } catch (NoSuchAlgorithmException everyJavaHasIt) {
      throw new IllegalStateException(everyJavaHasIt);
    }
  }

  private static <T> List<T> read(List<String> fields, Function<String, Stream<T>> reader) {
    return fields.isEmpty() ? List.of() : fields.stream().flatMap(reader).distinct().toList();
  }

  private static String wholeName(List<Token> whole) {
    if (NameReader.isPlaceholder(whole)) {
      return "";
    }
    List<String> words = new ArrayList<>();
    for (Token token : PersonReader.withoutSigns(whole)) {
      words.add(Spelling.withoutUmlauts(token.text()));
    }
    Collections.sort(words);
    return String.join(" ", words);
  }
}
