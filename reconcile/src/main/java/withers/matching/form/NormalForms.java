package withers.matching.form;

import com.google.i18n.phonenumbers.PhoneNumberUtil;
import com.ibm.icu.text.Transliterator;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.apache.commons.codec.language.Soundex;
import withers.contact.Contact;
import withers.organisation.NameSpelling;

/** Makes the normal form of contacts. Safe for several threads, and remembers what repeats. */
public final class NormalForms {

  /**
   * Addresses that are remembered, some 700 bytes each: one person's records, which are read one
   * after another, mostly have it alike. More would be remembered for nobody.
   */
  private static final int MOST_KEPT = 10_000;

  private final NameReader names = new NameReader(new NameWords());
  private final PhoneReader phones;
  private final Remembered<WrittenAddress, Optional<Address>> addresses =
      new Remembered<>(MOST_KEPT, written -> AddressReader.read(written.contact()));

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
        addresses.of(WrittenAddress.of(contact)));
  }

  /** All that is asked of a contact. */
  public FormedContact formed(Contact contact) {
    return new FormedContact(of(contact), NameSpelling.key(contact.fullName()));
  }

  /** Classes that decide how contacts read, with all that stands in the packages of each. */
  public static List<Class<?>> code() {
    return List.of(NormalForms.class, Contact.class, NameSpelling.class);
  }

  /** A class of each library that takes part. */
  public static List<Class<?>> libraries() {
    return List.of(PhoneNumberUtil.class, Transliterator.class, Soundex.class);
  }

  /** Each once, in the order written. */
  private static <T> List<T> read(List<String> fields, Function<String, List<T>> reader) {
    List<T> all = new ArrayList<>(fields.size());
    for (String field : fields) {
      for (T one : reader.apply(field)) {
        if (!all.contains(one)) {
          all.add(one);
        }
      }
    }
    return all;
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
