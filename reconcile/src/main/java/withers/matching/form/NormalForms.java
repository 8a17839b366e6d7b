package withers.matching.form;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.stream.Collectors;
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
    NameReader.Named named = names.read(contact);
    return new NormalForm(
        named.people(),
        named.organisation(),
        wholeName(contact.fullName()),
        contact.phones().stream().flatMap(phones::read).distinct().toList(),
        contact.emails().stream().flatMap(EmailReader::read).distinct().toList(),
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

  private static String wholeName(String name) {
    return NameReader.isPlaceholder(name)
        ? ""
        : Token.of(name).stream()
            .filter(token -> !token.isSign())
            .map(token -> Spelling.withoutUmlauts(token.text()))
            .sorted()
            .collect(Collectors.joining(" "));
  }
}
